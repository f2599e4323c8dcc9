import type { PrescribedExerciseId } from '../../dose/prescribed-exercise.ts';
import type { Words } from '../words/words.ts';

/** What a prescribed exercise is called. */
export const prescribedWords = (
  exercise: PrescribedExerciseId,
  { exercises }: Pick<Words, 'exercises'>,
): { readonly name: string; readonly plural: string; readonly about: string } => exercises[exercise];
