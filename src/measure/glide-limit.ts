import { type Deg, deg } from '../units.ts';
import type { ViewAdvice } from './live-view.ts';
import type { LegHeld } from './set-result.ts';

/** Half the width of the 95 % interval of a held leg's elevation, levelled by the other leg. From the rendered glides (docs/accuracy.md). */
export const ELEVATION_UNCERTAINTY_DEG = deg(4);
/** The same where the other leg does not lie flat and the picture's horizontal is taken for level: cameras stand askew by some degrees. Chosen. */
export const UNLEVELLED_UNCERTAINTY_DEG = deg(8);
/** Where no onset was marked the leg may go by this much above where it was held at the start: straps give, arms tire. Chosen; what the points are out by is in it, since it is the same from start to end. */
const HELD_MARGIN_DEG = 6;
/** The leg lies, or is held too low for a glide. Chosen: onsets under 20 degrees are rare. */
const LEAST_HELD_DEG = deg(15);
/** Above its limit for this long the leg is not just unsteady, ms. Chosen. */
export const ABOVE_MS = 1500;

/** What is not to be gone above. */
export type HeldLimit = Pick<LegHeld, 'limitDeg' | 'limitFrom'>;

/** Whether a leg is above its limit by more than the error. */
export const isAbove = (elevationDeg: Deg, { limitDeg, limitFrom }: HeldLimit): boolean =>
  elevationDeg - limitDeg > (limitFrom === 'marked' ? ELEVATION_UNCERTAINTY_DEG : HELD_MARGIN_DEG);

/** What is wrong with how high the leg is held before the set; where that is not known nothing is said. */
export function heldAdvice({
  elevationDeg,
  limit,
}: {
  readonly elevationDeg: Deg | null;
  readonly limit: HeldLimit | null;
}): readonly ViewAdvice[] {
  if (elevationDeg === null) return [];
  if (elevationDeg < LEAST_HELD_DEG) return ['leg-not-held'];
  return limit && isAbove(elevationDeg, limit) ? ['leg-too-high'] : [];
}
