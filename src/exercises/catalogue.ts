import type { Exercise, ExerciseId } from './exercise.ts';
import { footTap } from './foot-tap.ts';
import { kneeStraighten } from './knee-straighten.ts';
import { legRaise } from './leg-raise.ts';

const CATALOGUE: Readonly<Record<ExerciseId, Exercise>> = {
  'foot-tap': footTap,
  'leg-raise': legRaise,
  'knee-straighten': kneeStraighten,
};

/** The exercise called `id`. */
export const exerciseOf = (id: ExerciseId): Exercise => CATALOGUE[id];
