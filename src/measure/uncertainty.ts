import type { JointAngle } from '../angles/joint-angle.ts';
import { type Deg, deg } from '../units.ts';
import type { AngleSource } from './set-result.ts';

/** Two-sided 95 % of a normal distribution. */
const Z95 = 1.96;

/** Standard error of a range: a constant part, deg, and a part that grows with the range (projection, shading, the model's habit of shrinking). */
interface RangeError {
  readonly constantDeg: number;
  readonly share: number;
}

/**
 * From the errors on rendered clips with known truth (docs/accuracy.md), every clip weighing alike, rounded up. Each clip left out in turn, intervals set
 * on the others held the truth in 93 % of its foot taps, 94 % of its leg raises and, with only four clips, 69 % of its knee extensions, which are wider
 * here for that. Not checked on people.
 */
const RANGE_ERROR: Readonly<Record<JointAngle, Readonly<Record<AngleSource, RangeError>>>> = {
  'ankle-dorsiflexion': {
    flow: { constantDeg: 0.5, share: 0.04 },
    fused: { constantDeg: 0.8, share: 0.05 },
    landmarks: { constantDeg: 3.5, share: 0.2 },
  },
  'leg-elevation': {
    flow: { constantDeg: 0.6, share: 0.03 },
    fused: { constantDeg: 0.8, share: 0.035 },
    landmarks: { constantDeg: 1, share: 0.035 },
  },
  'knee-flexion': {
    flow: { constantDeg: 1.2, share: 0.025 },
    fused: { constantDeg: 1.5, share: 0.05 },
    landmarks: { constantDeg: 2, share: 0.1 },
  },
};

/** Half the width of the 95 % interval of a repetition's range. @param noiseDeg standard deviation of the smoothed angle at its ends */
export function rangeUncertainty(angle: JointAngle, source: AngleSource, range: Deg, noiseDeg: number): Deg {
  const { constantDeg, share } = RANGE_ERROR[angle][source];
  return deg(Z95 * Math.sqrt(constantDeg ** 2 + (share * range) ** 2 + 2 * noiseDeg ** 2));
}
