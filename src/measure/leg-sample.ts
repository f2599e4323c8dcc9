import type { Facing, LegLines } from '../angles/joint-angle.ts';
import type { CameraMotion } from '../flow/camera-motion.ts';
import type { LegMotion } from '../flow/leg-motion.ts';
import type { Posture } from '../pose/head-up.ts';
import { type Landmark, landmark, type Side } from '../pose/landmarks.ts';
import type { Ms } from '../units.ts';
import { lineBetween } from './line-between.ts';
import type { LegDrawing, PicturePoint } from './live-view.ts';
import { isFarLeg } from './near-leg.ts';
import type { Observation } from './observation.ts';

/** The near side of the body in the picture. */
export interface BodyPoints extends LegDrawing {
  readonly shoulder: PicturePoint;
}

/** The side that is turned away: what tells how far the camera is turned. */
export type OtherSide = Pick<BodyPoints, 'shoulder' | 'hip' | 'knee' | 'ankle'>;

/** What the set keeps of a frame: the near leg and the trunk, not all 33 points. */
export interface LegSample {
  readonly tMs: Ms;
  /** Null also when they are those of the other leg. */
  readonly points: BodyPoints | null;
  /** A body was seen, but the model takes this leg for the one turned away: its points there are not this leg's. */
  readonly farLeg: boolean;
  /** Null when `points` is. */
  readonly other: OtherSide | null;
  readonly motion: LegMotion | null;
  readonly camera: CameraMotion | null;
}

const pointOf = ({ x, y }: Landmark): PicturePoint => ({ x, y });

/** The near side's points of a pose. */
export function bodyPoints(landmarks: readonly Landmark[], side: Side): BodyPoints {
  const at = (name: 'Shoulder' | 'Hip' | 'Knee' | 'Ankle' | 'Heel' | 'Toe') => pointOf(landmark(landmarks, `${side}${name}`));
  return { shoulder: at('Shoulder'), hip: at('Hip'), knee: at('Knee'), ankle: at('Ankle'), heel: at('Heel'), toe: at('Toe') };
}

/** The side of a pose that is not `side`. */
export const otherSide = (landmarks: readonly Landmark[], side: Side): OtherSide =>
  bodyPoints(landmarks, side === 'left' ? 'right' : 'left');

export function sampleOf({ tMs, landmarks, motion, camera }: Observation, side: Side): LegSample {
  const farLeg = landmarks !== null && isFarLeg(landmarks, side);
  const near = farLeg ? null : landmarks;
  return { tMs, points: near && bodyPoints(near, side), farLeg, other: near && otherSide(near, side), motion, camera };
}

export const legLines = (p: LegDrawing): LegLines => ({
  thigh: lineBetween(p.hip, p.knee),
  shank: lineBetween(p.knee, p.ankle),
  foot: lineBetween(p.heel, p.toe),
});

/** Which way a sitting or standing person's toes, or a lying person's feet, point in the picture. */
export const facingOf = (p: LegDrawing, posture: Posture): Facing =>
  (posture === 'lying' ? p.ankle.x < p.hip.x : p.toe.x < p.heel.x) ? 'left' : 'right';
