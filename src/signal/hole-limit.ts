import { type Ms, ms } from '../units.ts';
import { median } from './median.ts';

/** Holes in a measurement up to this long are bridged; a longer one parts it. Chosen: shorter than any tap's way up and down. */
const BRIDGE_MS = 250;
/** Where frames are scarce, this many frame times are bridged: three dropped in a row are no loss of the leg. Chosen. */
const BRIDGE_FRAMES = 4.2;

/**
 * The longest hole that is bridged in a series.
 * @param tMs times of all its frames, measured or not, in order
 * @param leastMs the shortest movement of the exercise: a shorter hole hides none
 */
export function holeLimit(tMs: readonly number[], leastMs: Ms): Ms {
  const usual = median(tMs.slice(1).map((t, i) => t - (tMs[i] as number)));
  return ms(Math.max(BRIDGE_MS, leastMs, BRIDGE_FRAMES * (usual ?? 0)));
}
