import type { ExerciseId } from '../exercises/exercise.ts';
import type { MeasuredRep, SetResult } from '../measure/set-result.ts';
import type { Side } from '../pose/landmarks.ts';
import { fail, ok, type Result } from '../result.ts';
import { median } from '../signal/median.ts';
import { type PercentDifference, percentDifference } from './percent-difference.ts';
import { type RangeDifference, rangeDifference, type TooFewRepetitions } from './range-difference.ts';
import { seenByOf } from './seen-by-of.ts';

/**
 * What of a set is compared; repetitions struck out by hand are left out before. Of the catalogue's exercises only: a therapist's own has no error
 * figures of its own, and two of them need not be the same.
 */
export interface ComparableSet extends Pick<SetResult, 'side' | 'reps'> {
  readonly exercise: ExerciseId;
}

export interface SetComparison {
  /** Of the complete repetitions. */
  readonly range: RangeDifference;
  /** Number of complete repetitions. */
  readonly count: PercentDifference;
  /** Median hold of the complete repetitions, of heel stands the time up, ms. */
  readonly holdMs: PercentDifference;
}

export type ComparisonError =
  | TooFewRepetitions
  | { readonly kind: 'different-exercises'; readonly found: ExerciseId; readonly reference: ExerciseId }
  /** Two sets of one leg were asked for, and these are of two. */
  | { readonly kind: 'different-sides' }
  /** A left and a right leg were asked for, and both are this one. */
  | { readonly kind: 'same-side'; readonly side: Side };

/** A set against an earlier one of the same leg: `set` minus `earlier`, positive when it has become more. */
export function setAgainstSet(set: ComparableSet, earlier: ComparableSet): Result<SetComparison, ComparisonError> {
  return set.side === earlier.side ? compared(set, earlier) : fail({ kind: 'different-sides' });
}

/**
 * One leg against the other: `set` minus `other`, positive when it moves further. Healthy legs differ too: a straight leg raise by 5.0 -+ 3.5 degrees
 * (Boyd and Villa 2012, BMC Musculoskelet Disord 13:245), so a real difference is not yet an unusual one.
 */
export function sideAgainstSide(set: ComparableSet, other: ComparableSet): Result<SetComparison, ComparisonError> {
  return set.side === other.side ? fail({ kind: 'same-side', side: set.side }) : compared(set, other);
}

function compared(set: ComparableSet, reference: ComparableSet): Result<SetComparison, ComparisonError> {
  if (set.exercise !== reference.exercise)
    return fail({ kind: 'different-exercises', found: set.exercise, reference: reference.exercise });
  const own = set.reps.filter((rep) => rep.complete);
  const others = reference.reps.filter((rep) => rep.complete);
  const ranges = (reps: readonly MeasuredRep[]) => reps.map((rep) => rep.rangeDeg);
  const between = set.side === reference.side ? 'occasions' : 'legs';
  const range = rangeDifference(set.exercise, between, ranges(own), ranges(others), seenByOf([...own, ...others]));
  if (!range.ok) return range;
  const hold = (reps: readonly MeasuredRep[]) => median(reps.map((rep) => rep.upMs ?? rep.holdMs)) ?? 0;
  return ok({
    range: range.value,
    count: percentDifference(own.length, others.length),
    holdMs: percentDifference(hold(own), hold(others)),
  });
}
