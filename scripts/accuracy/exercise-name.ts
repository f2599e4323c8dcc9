import type { ExerciseId } from '../../src/exercises/exercise.ts';

/** What an exercise is called in the report. */
export const EXERCISE_NAME: Readonly<Record<ExerciseId, string>> = {
  'foot-tap': 'foot taps',
  'leg-raise': 'leg raises',
  'nerve-glide': 'nerve glides',
  'heel-stand': 'heel stands',
  'knee-straighten': 'knee extensions',
  'toe-lift': 'big toe lifts',
};
