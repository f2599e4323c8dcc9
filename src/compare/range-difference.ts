import { sampleStandardDeviation } from 'simple-statistics';
import type { ExerciseId, SeenBy } from '../exercises/exercise.ts';
import { fail, ok, type Result } from '../result.ts';
import { median } from '../signal/median.ts';
import { type Deg, deg } from '../units.ts';
import { type Between, type ErrorBasis, rangeChangeOf, rangeErrorOf } from './range-error.ts';

/** Two-sided 95 % of a normal distribution. */
const Z95 = 1.96;
/** A median's standard error over that of the mean, for normal values in a large sample: sqrt(pi / 2). */
const MEDIAN_FACTOR = Math.sqrt(Math.PI / 2);
/** With fewer repetitions on either side the scatter of the set itself is unknown. Chosen. */
export const LEAST_REPETITIONS = 3;

/** `real`: larger than measuring alone explains. `within-error`: it may be there or not; the measurement cannot tell. */
export type Verdict = 'real' | 'within-error';

/** How far the ranges of one group of repetitions differ from those of another. */
export interface RangeDifference {
  /** Median of the one and of the other it is compared with. */
  readonly rangeDeg: Deg;
  readonly referenceDeg: Deg;
  /** The first minus the second; no percentage, since an angle near zero would make it explode. */
  readonly differenceDeg: Deg;
  /** MDC95 of the exercise. */
  readonly mdcDeg: Deg;
  /** What the difference must exceed to be real: the MDC95, and the scatter of these very repetitions on top. Never below `mdcDeg`. */
  readonly limitDeg: Deg;
  readonly verdict: Verdict;
  /** What the MDC95 was taken from. */
  readonly basis: ErrorBasis;
}

export interface TooFewRepetitions {
  readonly kind: 'too-few-repetitions';
  /** Complete repetitions of the group with fewer. */
  readonly found: number;
  readonly needed: number;
}

/**
 * Difference of two groups of ranges of the same exercise, against the error.
 * @param seenBy what both groups were measured through; `pose` where they differ, whose error is the larger
 * limit = sqrt(MDC95^2 + (1.96 se)^2 + (1.96 se')^2), with se = sqrt(pi / 2) SD / sqrt(n) of each median.
 */
export function rangeDifference(
  exercise: ExerciseId,
  between: Between,
  ranges: readonly Deg[],
  reference: readonly Deg[],
  seenBy: SeenBy = 'pose',
): Result<RangeDifference, TooFewRepetitions> {
  const found = Math.min(ranges.length, reference.length);
  const rangeDeg = median(ranges);
  const referenceDeg = median(reference);
  if (rangeDeg === null || referenceDeg === null || found < LEAST_REPETITIONS)
    return fail({ kind: 'too-few-repetitions', found, needed: LEAST_REPETITIONS });
  const mdcDeg = rangeChangeOf(exercise, between, seenBy);
  const limitDeg = deg(Math.hypot(mdcDeg, Z95 * errorOfMedian(ranges), Z95 * errorOfMedian(reference)));
  const differenceDeg = deg(rangeDeg - referenceDeg);
  return ok({
    rangeDeg: deg(rangeDeg),
    referenceDeg: deg(referenceDeg),
    differenceDeg,
    mdcDeg,
    limitDeg,
    verdict: Math.abs(differenceDeg) > limitDeg ? 'real' : 'within-error',
    basis: rangeErrorOf(exercise, between, seenBy).basis,
  });
}

/** Standard error of the median of these values, from their own scatter. */
export const errorOfMedian = (values: readonly number[]): number =>
  (MEDIAN_FACTOR * sampleStandardDeviation([...values])) / Math.sqrt(values.length);
