import type { PrescribedExerciseId } from '../../dose/prescribed-exercise.ts';
import { isExerciseId } from '../../exercises/exercise.ts';
import type { Words } from '../words/words.ts';

/** What a prescribed exercise is called, measured by the camera or not. */
export const prescribedWords = (
  exercise: PrescribedExerciseId,
  { exercises, day }: Pick<Words, 'exercises' | 'day'>,
): { readonly name: string; readonly plural: string; readonly about: string } =>
  isExerciseId(exercise) ? exercises[exercise] : day.byHandOnly[exercise];
