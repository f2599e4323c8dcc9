import { type Deg, deg, type Ms } from '../units.ts';
import type { ViewAdvice } from './live-view.ts';
import type { LegHeld } from './set-result.ts';

/** Half the width of the 95 % interval of a held leg's elevation, levelled by the other leg: on 12 rendered glides, some turned by 15 degrees, 3.6 degrees off (rms), times 2 (docs/accuracy.md). */
export const ELEVATION_UNCERTAINTY_DEG = deg(7);
/** Above a marked limit by more than this the set ends. Chosen below the interval: a leg that rises in a set does so by what the motion tells, which is sure to a degree or two. */
const MARKED_MARGIN_DEG = 5;
/** The same where the other leg does not lie flat and the picture's horizontal is taken for level: cameras stand askew by some degrees. Chosen. */
export const UNLEVELLED_UNCERTAINTY_DEG = deg(8);
/** Where no onset was marked the leg may go by this much above where it was held at the start: straps give, arms tire. Chosen; what the points are out by is in it, since it is the same from start to end. */
const HELD_MARGIN_DEG = 6;
/** The leg lies, or is held too low for a glide. Chosen: onsets under 20 degrees are rare. */
const LEAST_HELD_DEG = deg(15);
/** Above its limit for this long the leg is not just unsteady, ms. Chosen. */
const ABOVE_MS = 1500;

/** What is not to be gone above. */
export type HeldLimit = Pick<LegHeld, 'limitDeg' | 'limitFrom'>;

/** Whether a leg is clearly above its limit. */
const isAbove = (elevationDeg: Deg, { limitDeg, limitFrom }: HeldLimit): boolean =>
  elevationDeg - limitDeg > (limitFrom === 'marked' ? MARKED_MARGIN_DEG : HELD_MARGIN_DEG);

/** A leg that is watched. */
export interface LimitWatch {
  /** Null: not measured now. */
  readonly elevationDeg: Deg | null;
  /** Null: not known yet. */
  readonly limit: HeldLimit | null;
  /** Since when it has been above it; null: it is not. */
  readonly aboveSinceMs: Ms | null;
}

/** Whether the leg has now been above its limit for too long. A frame in which it is not measured changes nothing. */
export function heedLimit<W extends LimitWatch>(before: W, tMs: Ms): readonly [W, boolean] {
  const { elevationDeg, limit, aboveSinceMs } = before;
  if (elevationDeg === null || !limit) return [before, false];
  if (!isAbove(elevationDeg, limit)) return [{ ...before, aboveSinceMs: null }, false];
  const sinceMs = aboveSinceMs ?? tMs;
  return [{ ...before, aboveSinceMs: sinceMs }, tMs - sinceMs >= ABOVE_MS];
}

/** What is wrong with how high the leg is held before the set; where that is not known nothing is said. */
export function heldAdvice({ elevationDeg, limit }: Pick<LimitWatch, 'elevationDeg' | 'limit'>): readonly ViewAdvice[] {
  if (elevationDeg === null) return [];
  if (elevationDeg < LEAST_HELD_DEG) return ['leg-not-held'];
  return limit && isAbove(elevationDeg, limit) ? ['leg-too-high'] : [];
}
