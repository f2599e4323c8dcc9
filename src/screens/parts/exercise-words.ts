import { likeOf } from '../../exercises/defined-exercise.ts';
import type { SetHeader } from '../../record/stored-set.ts';
import type { Words } from '../words/words.ts';

/** What the exercise of a stored set and its angle are called; a therapist's own goes by the name they gave it. */
export function exerciseWords(
  { exercise, definition }: Pick<SetHeader, 'exercise' | 'definition'>,
  words: Words['exercises'],
): { readonly plural: string; readonly angle: string } {
  if (exercise !== 'own') return words[exercise];
  if (!definition) throw new Error('exerciseWords requires the definition of an own exercise, got none');
  return { plural: definition.name, angle: words[likeOf(definition)].angle };
}
