import type { Exercise, ExerciseId } from './exercise.ts';
import type { ExerciseDefinition } from './exercise-definition.ts';
import { footTap } from './foot-tap.ts';
import { heelStand } from './heel-stand.ts';
import { kneeStraighten } from './knee-straighten.ts';
import { legRaise } from './leg-raise.ts';

/** The catalogue's exercise of each joint: what a definition leaves open is as there. */
const LIKE = {
  'ankle-dorsiflexion': footTap,
  'leg-elevation': legRaise,
  'knee-flexion': kneeStraighten,
  'foot-elevation': heelStand,
} as const satisfies Record<ExerciseDefinition['angle'], Exercise>;

/** The catalogue's exercise that looks at the same parts of the leg: what a recording of it says it is of. */
export const likeOf = ({ angle }: Pick<ExerciseDefinition, 'angle'>): ExerciseId => LIKE[angle].id;

/** A therapist's exercise as it is measured. */
export function definedExercise(definition: ExerciseDefinition): Exercise {
  const { angle, posture, direction, noticeDeg, leastDeg, completeShare, leastMs } = definition;
  const { rule, segments, acceleration } = LIKE[angle];
  return {
    id: 'own',
    definition,
    posture,
    seenBy: ['pose'],
    angle,
    segments,
    acceleration,
    rule: { ...rule, direction, noticeDeg, leastDeg, completeShare, leastMs },
  };
}
