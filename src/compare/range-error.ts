import type { ExerciseId } from '../exercises/exercise.ts';
import { type Deg, deg } from '../units.ts';
import { minimalDetectableChange } from './minimal-detectable-change.ts';

/** What a standard error was taken from. `rendered-bodies`: residuals against known truth. `repeated-measurements`: the same people twice. */
export type ErrorBasis = 'rendered-bodies' | 'repeated-measurements';

export interface RangeError {
  /** Standard error of measurement of a set's range, deg. */
  readonly semDeg: Deg;
  readonly basis: ErrorBasis;
}

/**
 * SEM of a set's range for each exercise. Nobody has been measured twice yet, so each is the standard deviation of the errors on the clips with known
 * truth, as reported ("fused" in docs/accuracy.md: half the width of the 95 % limits of the range, over 1.96), rounded up to a tenth of a degree.
 * Rendered bodies do not vary from day to day as people do, so the true values are larger: those of clinical instruments are 1.3 to 2.8 degrees for
 * the ankle (Konor et al. 2012, Int J Sports Phys Ther 7:279) and 2.8 to 4.2 for a passive leg raise (2009, J Sports Sci Med 8:116, table 1).
 */
const RANGE_ERROR: Readonly<Record<ExerciseId, RangeError>> = {
  'foot-tap': { semDeg: deg(0.7), basis: 'rendered-bodies' },
  'leg-raise': { semDeg: deg(1.3), basis: 'rendered-bodies' },
  'heel-stand': { semDeg: deg(0.7), basis: 'rendered-bodies' },
  'knee-straighten': { semDeg: deg(1.2), basis: 'rendered-bodies' },
};

/** The error of a set's range in this exercise. */
export const rangeErrorOf = (exercise: ExerciseId): RangeError => RANGE_ERROR[exercise];

/** MDC95 of a set's range in this exercise, deg. */
export const rangeChangeOf = (exercise: ExerciseId): Deg => deg(minimalDetectableChange(RANGE_ERROR[exercise].semDeg));
