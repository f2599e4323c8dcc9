import type { Ms } from '../../units.ts';
import type { Tone } from './tones.ts';

/** How many whole seconds of the hold under way were heard, and whether its end was said. */
export interface HeldVoice {
  readonly seconds: number;
  readonly done: boolean;
}

export const NOT_HELD: HeldVoice = { seconds: 0, done: false };

/**
 * Counts a hold aloud: a tick for each second, and once that it is long enough.
 * @param heldMs null: nothing is held
 * @param holdS how long it is to be held; 0: not at all
 */
export function hearHeld(
  { seconds, done }: HeldVoice,
  heldMs: Ms | null,
  holdS: number,
): { readonly state: HeldVoice; readonly tone: Tone | null; readonly done: boolean } {
  if (heldMs === null || holdS === 0) return { state: NOT_HELD, tone: null, done: false };
  const now = Math.floor(heldMs / 1000);
  // A top that is passed begins the hold anew, and its ticks too; once it was long enough nothing more is said.
  if (done || now === seconds) return { state: { seconds, done }, tone: null, done: false };
  const enough = now >= holdS;
  return { state: { seconds: now, done: enough }, tone: now > seconds && !enough ? 'second' : null, done: enough };
}
