import type { AnyExerciseId } from '../../exercises/exercise.ts';
import type { Words } from '../words/words.ts';

/** What the sides of an exercise are called: the feet of a big toe, else the legs. */
export const limbsOf = (exercise: AnyExerciseId, { sides, feet }: Pick<Words, 'sides' | 'feet'>): Words['sides'] =>
  exercise === 'toe-lift' ? feet : sides;
