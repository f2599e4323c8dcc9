import type { Facing, LegLines } from '../angles/joint-angle.ts';
import type { CameraMotion } from '../flow/camera-motion.ts';
import type { LegMotion } from '../flow/leg-motion.ts';
import type { Posture } from '../pose/head-up.ts';
import { type Landmark, landmark, type Side } from '../pose/landmarks.ts';
import { type Ms, type Ratio, ratio } from '../units.ts';
import { lineBetween } from './line-between.ts';
import type { LegDrawing, PicturePoint } from './live-view.ts';
import { isFarLeg } from './near-leg.ts';
import type { Observation } from './observation.ts';

/** The near side of the body in the picture. */
export interface BodyPoints extends LegDrawing {
  readonly shoulder: PicturePoint;
}

/** What tells how the head lies: the near ear and the nose, and how sure the model is of the less sure of both. */
export interface HeadPoints {
  readonly ear: PicturePoint;
  readonly nose: PicturePoint;
  readonly visibility: Ratio;
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
  /** Null when `points` is. */
  readonly head: HeadPoints | null;
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

function headPoints(landmarks: readonly Landmark[], side: Side): HeadPoints {
  const ear = landmark(landmarks, `${side}Ear`);
  const nose = landmark(landmarks, 'nose');
  return { ear: pointOf(ear), nose: pointOf(nose), visibility: ratio(Math.min(ear.visibility, nose.visibility)) };
}

export function sampleOf({ tMs, landmarks, motion, camera }: Observation, side: Side): LegSample {
  const farLeg = landmarks !== null && isFarLeg(landmarks, side);
  const near = farLeg ? null : landmarks;
  return {
    tMs,
    points: near && bodyPoints(near, side),
    farLeg,
    other: near && otherSide(near, side),
    head: near && headPoints(near, side),
    motion,
    camera,
  };
}

export const legLines = (p: LegDrawing): LegLines => ({
  thigh: lineBetween(p.hip, p.knee),
  shank: lineBetween(p.knee, p.ankle),
  foot: lineBetween(p.heel, p.toe),
});

/**
 * Which way a sitting or standing person's toes, or a lying person's feet, point in the picture. A lying person's trunk tells it where it is known: a leg
 * that is held up may point anywhere.
 */
export function facingOf(p: LegDrawing | BodyPoints, posture: Posture): Facing {
  if (posture !== 'lying') return p.toe.x < p.heel.x ? 'left' : 'right';
  const feet = 'shoulder' in p ? p.hip.x - p.shoulder.x : p.ankle.x - p.hip.x;
  return feet < 0 ? 'left' : 'right';
}
