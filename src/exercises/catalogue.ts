import { definedExercise } from './defined-exercise.ts';
import type { Exercise, ExerciseId } from './exercise.ts';
import type { ExerciseDefinition } from './exercise-definition.ts';
import { footTap } from './foot-tap.ts';
import { heelStand } from './heel-stand.ts';
import { kneeStraighten } from './knee-straighten.ts';
import { legRaise } from './leg-raise.ts';
import { nerveGlide } from './nerve-glide.ts';

const CATALOGUE: Readonly<Record<ExerciseId, Exercise>> = {
  'foot-tap': footTap,
  'leg-raise': legRaise,
  'nerve-glide': nerveGlide,
  'heel-stand': heelStand,
  'knee-straighten': kneeStraighten,
};

/** The exercise called by its id, or the one that a therapist defined. */
export const exerciseOf = (which: ExerciseId | ExerciseDefinition): Exercise =>
  typeof which === 'string' ? CATALOGUE[which] : definedExercise(which);
