import type { ExerciseId } from '../exercises/exercise.ts';
import type { MeasuredRep } from '../measure/set-result.ts';
import { type Deg, deg, type Ms } from '../units.ts';
import { rangeErrorOf } from './range-error.ts';

/** Two-sided 95 % of a normal distribution. */
const Z95 = 1.96;

/**
 * Half the width of the 95 % interval of an angle that was marked in a followed movement, from rest: that of the movement it was marked in where that is wider
 * than what marked angles usually have.
 */
export function followedError(exercise: ExerciseId, reps: readonly MeasuredRep[], atMs: Ms): Deg {
  const usual = Z95 * rangeErrorOf(exercise, 'marks').semDeg;
  const around = reps.find(({ startMs, endMs }) => startMs <= atMs && atMs <= endMs);
  return deg(Math.max(usual, around?.uncertaintyDeg ?? 0));
}
