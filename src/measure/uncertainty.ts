import { isLegAngle, type JointAngle, type LegAngle } from '../angles/joint-angle.ts';
import { turnedElevation } from '../angles/turned-elevation.ts';
import { type Deg, deg, degOfRad, radOfDeg } from '../units.ts';
import { slopeOfTurn } from './lying-turn.ts';
import type { AngleSource } from './set-result.ts';

/** What the error of one repetition's range is judged by. */
export interface RangeEvidence {
  readonly angle: JointAngle;
  readonly source: AngleSource;
  readonly rangeDeg: Deg;
  /** Standard deviation of the smoothed angle at the repetition's ends: the jitter, deg. */
  readonly noiseDeg: number;
  /** Standard error of the pictures' matches, or of the stickers' places, at rest and at the peak, both and all segments together, deg; 0 when only the landmarks tell. */
  readonly matchDeg: number;
  /** How far the angle does not come back to where it was, and the landmarks do not confirm it, deg; null when there is no rest on both sides. */
  readonly closureDeg: number | null;
  /** Lengths in the picture of the segments that make the angle, px. */
  readonly segmentsPx: readonly number[];
  /** How far the camera is turned; null: not known. */
  readonly cameraTurnDeg: Deg | null;
}

/** What is left of the error when jitter, match, closure, pixels and view are taken out: a constant part and one that grows with the range. */
interface Residual {
  readonly constantDeg: number;
  readonly share: number;
  /** Half the width of a 95 % interval over its standard error: Student's t for as many clips as the two numbers come from. */
  readonly t95: number;
}

/**
 * From the errors on 24 rendered clips with known truth (docs/accuracy.md), every clip weighing alike; Student's t of 13, 9 and 3 degrees of freedom, from
 * the table in Student (1908) as in every handbook. Those of landmarks alone, and of sets in which the motion was often lost, are rounded up.
 */
const RESIDUAL: Readonly<Record<LegAngle, Readonly<Record<Exclude<AngleSource, 'stickers'>, Residual>>>> = {
  'ankle-dorsiflexion': {
    flow: { constantDeg: 0.3, share: 0.025, t95: 2.16 },
    fused: { constantDeg: 0.8, share: 0.05, t95: 2.16 },
    landmarks: { constantDeg: 3.5, share: 0.2, t95: 2.16 },
  },
  'leg-elevation': {
    flow: { constantDeg: 0.3, share: 0.015, t95: 2.26 },
    fused: { constantDeg: 0.8, share: 0.03, t95: 2.26 },
    landmarks: { constantDeg: 1, share: 0.035, t95: 2.26 },
  },
  // Four clips only: their own residuals, and the ankle's for what is lost.
  'foot-elevation': {
    flow: { constantDeg: 0.5, share: 0.04, t95: 3.18 },
    fused: { constantDeg: 0.8, share: 0.06, t95: 3.18 },
    landmarks: { constantDeg: 3.5, share: 0.2, t95: 3.18 },
  },
  'knee-flexion': {
    flow: { constantDeg: 1, share: 0.01, t95: 3.18 },
    fused: { constantDeg: 1.5, share: 0.03, t95: 3.18 },
    landmarks: { constantDeg: 2, share: 0.1, t95: 3.18 },
  },
};

/** Stickers, whichever joint they make: what 13 lifts of two rendered feet leave, rounded up, and Student's t for as many; centres, lengths and view come beside it. */
const BY_STICKERS: Residual = { constantDeg: 0.2, share: 0.01, t95: 2.18 };

const residualOf = (angle: JointAngle, source: AngleSource): Residual =>
  source !== 'stickers' && isLegAngle(angle) ? RESIDUAL[angle][source] : BY_STICKERS;

/** The errors on rendered clips come to half of what the matches say of themselves; best of 0, 1/4, 1/2 and 1 over all three exercises. */
const MATCH_SHARE = 0.5;
/** What a segment's end is out by in the picture, px. Chosen: matches of synthetic pictures scatter by 0.1 to 0.3. */
const END_PX = 0.3;
/** How far a camera may be turned when that could not be told, deg. Chosen. */
export const UNKNOWN_TURN_DEG = 10;
/** Standard error of the turn where it is told: mean error 2.6 and 3.0 degrees over 44 rendered views, as a standard deviation. */
export const TURN_SE_DEG = 3.5;

/** Half the width of the 95 % interval of a repetition's range. */
export function rangeUncertainty(evidence: RangeEvidence): Deg {
  const { angle, source, rangeDeg, noiseDeg, matchDeg, closureDeg, segmentsPx } = evidence;
  const { constantDeg, share, t95 } = residualOf(angle, source);
  const byStickers = source === 'stickers';
  // What a sticker's place is out by is its match's own error, and all of it counts.
  const pixels = byStickers ? [] : segmentsPx.map((lengthPx) => degOfRad(END_PX / Math.max(1, lengthPx)));
  const se = Math.hypot(
    constantDeg,
    share * rangeDeg,
    Math.SQRT2 * noiseDeg,
    (byStickers ? 1 : MATCH_SHARE) * matchDeg,
    closureDeg ?? 0,
    viewError(evidence),
    ...pixels,
  );
  return deg(t95 * se);
}

/**
 * What the camera's turn adds, deg. It is corrected for, in a sitting person where it is large enough (`squared.ts`), in a lying one always: what is left is
 * what the turn's own error does. An unknown turn is taken for a middling one that nobody corrected.
 */
function viewError({ angle, rangeDeg, cameraTurnDeg }: RangeEvidence): number {
  const seen = (turnDeg: number): number =>
    angle === 'leg-elevation'
      ? turnedElevation(rangeDeg, slopeOfTurn(deg(turnDeg)))
      : rangeDeg / Math.cos(radOfDeg(deg(turnDeg)));
  const turn = cameraTurnDeg === null ? 0 : Math.abs(cameraTurnDeg);
  const off = cameraTurnDeg === null ? UNKNOWN_TURN_DEG : TURN_SE_DEG;
  return Math.abs(seen(turn + off) - seen(turn));
}

/** What the model's points leave of a head's true lift, taken out as one share for all (`head-series.ts`), differs from body to body and view to view: standard deviation as a share of the range, and a constant part, deg. From the rendered glides (docs/accuracy.md). */
const HEAD_SHARE_SD = 0.2;
const HEAD_CONSTANT_DEG = 1.5;
/** Student's t of 9 degrees of freedom, as above. */
const HEAD_T95 = 2.26;

/** Half the width of the 95 % interval of a head's range. */
export const headUncertainty = (rangeDeg: Deg): Deg => deg(HEAD_T95 * Math.hypot(HEAD_CONSTANT_DEG, HEAD_SHARE_SD * rangeDeg));
