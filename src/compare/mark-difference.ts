import type { ExerciseId } from '../exercises/exercise.ts';
import { fail, ok, type Result } from '../result.ts';
import { median } from '../signal/median.ts';
import { type Deg, deg } from '../units.ts';
import { minimalDetectableChange } from './minimal-detectable-change.ts';
import { errorOfMedian, LEAST_REPETITIONS, type TooFewRepetitions, type Verdict } from './range-difference.ts';
import { rangeChangeOf } from './range-error.ts';

/** Two-sided 95 % of a normal distribution. */
const Z95 = 1.96;

/** An angle with half the width of its 95 % interval. */
export interface AngleWithError {
  readonly angleDeg: Deg;
  readonly errorDeg: Deg;
}

export interface MarkDifference {
  /** Median of the first minus that of the second. */
  readonly differenceDeg: Deg;
  /** What the difference must exceed to be real. */
  readonly limitDeg: Deg;
  readonly verdict: Verdict;
}

/**
 * Difference of two groups of marked angles of one kind, against the error: the MDC95 of marked angles, or of these very ones where they are known less well
 * (their mean square, taken as constant within a leg: it does not average out), and their scatter on top, as for ranges.
 */
export function markDifference(
  exercise: ExerciseId,
  marks: readonly AngleWithError[],
  reference: readonly AngleWithError[],
): Result<MarkDifference, TooFewRepetitions> {
  const found = Math.min(marks.length, reference.length);
  const [of, to] = [marks, reference].map((group) => group.map(({ angleDeg }) => angleDeg)) as [Deg[], Deg[]];
  const [ofDeg, toDeg] = [median(of), median(to)];
  if (ofDeg === null || toDeg === null || found < LEAST_REPETITIONS)
    return fail({ kind: 'too-few-repetitions', found, needed: LEAST_REPETITIONS });
  const all = [...marks, ...reference];
  const ownSem = Math.hypot(...all.map(({ errorDeg }) => errorDeg / Z95)) / Math.sqrt(all.length);
  const mdc = Math.max(rangeChangeOf(exercise, 'marks'), minimalDetectableChange(ownSem));
  const limitDeg = deg(Math.hypot(mdc, Z95 * errorOfMedian(of), Z95 * errorOfMedian(to)));
  const differenceDeg = deg(ofDeg - toDeg);
  return ok({ differenceDeg, limitDeg, verdict: Math.abs(differenceDeg) > limitDeg ? 'real' : 'within-error' });
}
