import type { Posture } from '../pose/head-up.ts';
import { type BodyPoints, lineBetween } from './leg-sample.ts';

/** How far the trunk of a lying person, or the thigh of a sitting one, may be from the picture's horizontal. Chosen: generous, since cameras tilt. */
const LEVEL_DEG = 45;

const fromHorizontal = (directionDeg: number): number => {
  const d = Math.abs(directionDeg) % 180;
  return Math.min(d, 180 - d);
};

/** Whether the body is placed as the exercise needs it: lying with the trunk level, or sitting with the thigh level. Standing and walking are neither. */
export const inPosture = (points: BodyPoints, posture: Posture): boolean =>
  fromHorizontal(
    (posture === 'lying' ? lineBetween(points.shoulder, points.hip) : lineBetween(points.hip, points.knee)).directionDeg,
  ) <= LEVEL_DEG;
