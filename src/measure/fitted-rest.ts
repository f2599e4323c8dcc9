import type { RawAngle } from './movements.ts';

/** The rest before a movement is looked at for so long, ms. Chosen, as where movements are found. */
const REST_MS = 300;
/** A movement is found where a tenth of it is done; a toe on its way like a raised cosine set off before, by this share of the time from there to the top. Computed. */
const LEAD_SHARE = 0.26;
/** Fewer frames than this tell no rest; between quick lifts there are no more. */
const LEAST_FRAMES = 2;

interface Found {
  readonly startMs: number;
  readonly peakMs: number;
  readonly endMs: number;
}

/**
 * Where the joint rested before a movement: the mean of the measured angles, weighing alike. What is found from the lowest of noisy values on is too low.
 * Lag: none; a rest that is under way for a part of the time looked at is read by as much too high.
 * @param turned angles that rise in the exercise's direction
 * @param before the movement before it; null for the first
 * @returns null when it did not rest for long enough
 */
export function fittedRest(turned: readonly RawAngle[], movement: Found, before: Found | null): number | null {
  const toMs = movement.startMs - LEAD_SHARE * (movement.peakMs - movement.startMs);
  const downMs = before ? before.endMs + LEAD_SHARE * (before.endMs - before.peakMs) : Number.NEGATIVE_INFINITY;
  const fromMs = Math.max(downMs, toMs - REST_MS);
  const resting = turned.flatMap(({ tMs, measured }) => (measured && tMs >= fromMs && tMs <= toMs ? [measured.deg] : []));
  if (resting.length < LEAST_FRAMES) return null;
  return resting.reduce((sum, v) => sum + v, 0) / resting.length;
}
