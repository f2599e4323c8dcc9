import type { Exercise } from '../exercises/exercise.ts';
import { type Ms, ms } from '../units.ts';
import type { BodyPoints, LegSample } from './leg-sample.ts';
import { inPosture } from './posture.ts';

/**
 * For this long after a pose the picture's motion alone tells of the leg: between the poses of a slow machine, or where the model misses the
 * person for a moment. Longer than any pose takes and a leg raise through which the trunk is covered; so short that no chair is followed for long after the person has left. Chosen.
 */
export const MOTION_ALONE_MS = ms(2000);

/** The last pose: when it was, and whether the body was placed as the exercise needs it. */
export interface LastPose {
  readonly tMs: Ms;
  readonly placed: boolean;
}

export const poseAt = (tMs: Ms, points: BodyPoints, exercise: Exercise): LastPose => ({
  tMs,
  placed: inPosture(points, exercise.posture),
});

/** Whether a frame without a pose goes on from the last one: all that the exercise needs of the leg was followed in the picture. */
export const goesOn = (pose: LastPose, { tMs, motion }: LegSample, { segments }: Exercise): boolean =>
  tMs - pose.tMs <= MOTION_ALONE_MS && segments.every((segment) => motion?.[segment]);
