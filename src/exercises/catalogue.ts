import { isLegAngle, type LegAngle } from '../angles/joint-angle.ts';
import { definedExercise } from './defined-exercise.ts';
import type { Exercise, ExerciseId } from './exercise.ts';
import type { ExerciseDefinition } from './exercise-definition.ts';
import { footTap } from './foot-tap.ts';
import { heelStand } from './heel-stand.ts';
import { kneeStraighten } from './knee-straighten.ts';
import { legRaise } from './leg-raise.ts';
import { nerveGlide } from './nerve-glide.ts';
import { toeLift } from './toe-lift.ts';

const CATALOGUE: Readonly<Record<ExerciseId, Exercise>> = {
  'foot-tap': footTap,
  'leg-raise': legRaise,
  'nerve-glide': nerveGlide,
  'heel-stand': heelStand,
  'knee-straighten': kneeStraighten,
  'toe-lift': toeLift,
};

/** The exercise called by its id, or the one that a therapist defined. */
export const exerciseOf = (which: ExerciseId | ExerciseDefinition): Exercise =>
  typeof which === 'string' ? CATALOGUE[which] : definedExercise(which);

/** The leg's angle that an exercise measures. @throws Error for one that is seen by stickers alone, in which no leg is looked at */
export function legAngleOf(which: ExerciseId): LegAngle {
  const { angle } = exerciseOf(which);
  if (!isLegAngle(angle)) throw new Error(`legAngleOf requires an exercise of the leg, got ${which}`);
  return angle;
}
