import { isPassing, type ServerError } from './server-error.ts';

/** The longest wait after the first whole attempt that failed, its own tries (`ask.ts`) included; it doubles with each further one. Chosen: minutes, then each hour. */
export const FIRST_PAUSE_MS = 5 * 60_000;
export const LONGEST_PAUSE_MS = 3_600_000;
/** More than this a server is not believed. Chosen: a day. */
export const LONGEST_ASKED_MS = 86_400_000;

/** Whether it may be over by itself in a while: what `ask` tries again, and a network that answers in the server's place until somebody signs in to it. */
export const mayPass = (error: ServerError): boolean => isPassing(error) || error.kind === 'not-fhir';

/** How long the server asks to be left alone, ms; 0: it does not say. */
export const askedPause = (error: ServerError): number => {
  const asked = error.kind === 'busy' || error.kind === 'failed' ? error.afterMs : null;
  return Math.min(asked ?? 0, LONGEST_ASKED_MS);
};

/**
 * How long to wait before all that waits is tried again: at least what the server asked for, then between half of a bound and all of it.
 * @param failures attempts that failed one after the other, from 1
 * @param chance in [0, 1)
 * @returns ms
 */
export function pauseBeforeNext(failures: number, error: ServerError, chance: number): number {
  const bound = Math.min(FIRST_PAUSE_MS * 2 ** (failures - 1), LONGEST_PAUSE_MS);
  return Math.round(askedPause(error) + bound * (0.5 + chance / 2));
}
