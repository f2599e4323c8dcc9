import type { JointAngle } from '../angles/joint-angle.ts';
import type { Segment } from '../flow/leg-motion.ts';
import type { Posture } from '../pose/head-up.ts';
import type { RepRule } from '../reps/rep-rule.ts';
import type { ExerciseDefinition } from './exercise-definition.ts';

/** The exercises that are measured. */
export const EXERCISE_IDS = ['foot-tap', 'leg-raise', 'nerve-glide', 'heel-stand', 'knee-straighten', 'toe-lift'] as const;
export type ExerciseId = (typeof EXERCISE_IDS)[number];

/** An exercise of the catalogue, or a therapist's own. */
export type AnyExerciseId = ExerciseId | 'own';

export const isExerciseId = (x: string): x is ExerciseId => EXERCISE_IDS.some((id) => id === x);

/** How a set is seen: the whole body by the pose model, or a foot close by through stickers on its skin. */
export type SeenBy = 'pose' | 'stickers';

/** One entry of the catalogue: what is measured, in which posture, and what counts as a repetition. */
export interface Exercise {
  readonly id: AnyExerciseId;
  /** Of a therapist's own exercise (`own`), and only there. */
  readonly definition?: ExerciseDefinition;
  readonly posture: Posture;
  /** The ways in which it can be measured, the usual one first. */
  readonly seenBy: readonly [SeenBy, ...SeenBy[]];
  /** The joint whose angle is counted and reported. */
  readonly angle: JointAngle;
  /** The segments whose turning in the picture is followed beside the pose model. */
  readonly segments: readonly Segment[];
  /** Whether the leg is held up and still while only the foot moves: the model then takes the other leg for it, for seconds, and the picture's motion knows better. */
  readonly heldLeg?: boolean;
  readonly rule: RepRule;
  /** How sharply the angle may change its speed, for the smoother: spectral density, (deg/s^2)^2 per Hz. */
  readonly acceleration: number;
}

/** An exercise of the catalogue itself. */
export interface CatalogueExercise extends Exercise {
  readonly id: ExerciseId;
}
