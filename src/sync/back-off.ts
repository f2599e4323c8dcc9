/** The longest wait before the second try; it doubles with each further one. Chosen. */
const FIRST_MS = 1000;
const LONGEST_MS = 60_000;
/** A server that asks for more than this is asked again another time. Chosen. */
const MOST_ASKED_MS = 120_000;

/**
 * How long to wait after a try that failed: anything up to a bound that doubles, so that many machines that were cut off together do not come back together.
 * What the server asked for comes first, with the same spread on top.
 * @param attempt which try failed, from 1
 * @param askedMs what the server asked for; null: nothing
 * @param chance in [0, 1)
 * @returns ms; null: too long to wait for
 */
export function waitBefore(attempt: number, askedMs: number | null, chance: number): number | null {
  const bound = Math.min(FIRST_MS * 2 ** (attempt - 1), LONGEST_MS);
  if (askedMs !== null && askedMs > MOST_ASKED_MS) return null;
  return Math.round((askedMs ?? 0) + chance * bound);
}
