import type { Facing, LegLines, SegmentLine } from '../angles/joint-angle.ts';
import type { CameraMotion } from '../flow/camera-motion.ts';
import type { LegMotion } from '../flow/leg-motion.ts';
import { type Landmark, landmark, type Side } from '../pose/landmarks.ts';
import { degOfRad, type Ms } from '../units.ts';
import type { LegDrawing, PicturePoint } from './live-view.ts';
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
  readonly points: BodyPoints | null;
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

export const sampleOf = ({ tMs, landmarks, motion, camera }: Observation, side: Side): LegSample => ({
  tMs,
  points: landmarks && bodyPoints(landmarks, side),
  other: landmarks && otherSide(landmarks, side),
  motion,
  camera,
});

/** The line from one point to another. */
export const lineBetween = (from: PicturePoint, to: PicturePoint): SegmentLine => ({
  directionDeg: degOfRad(Math.atan2(to.y - from.y, to.x - from.x)),
  lengthPx: Math.hypot(to.x - from.x, to.y - from.y),
});

export const legLines = (p: LegDrawing): LegLines => ({
  thigh: lineBetween(p.hip, p.knee),
  shank: lineBetween(p.knee, p.ankle),
  foot: lineBetween(p.heel, p.toe),
});

/** Which way a sitting person's toes, or a lying person's feet, point in the picture. */
export const facingOf = (p: BodyPoints, posture: 'upright' | 'lying'): Facing =>
  (posture === 'lying' ? p.ankle.x < p.hip.x : p.toe.x < p.heel.x) ? 'left' : 'right';
