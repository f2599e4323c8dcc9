import type { QuarterTurn } from '../capture/frame.ts';
import { type Landmark, type LandmarkName, landmark } from './landmarks.ts';

/** How the body is placed in the picture: sitting (`upright`), lying on the back, or standing. */
export type Posture = 'upright' | 'lying' | 'standing';
/** Towards which edge of the picture a lying person's head points; `find` looks for it. */
export type HeadTowards = 'left' | 'right' | 'find';

/** The turn that brings a lying person's head to the top of the picture. */
export const headUpTurn = (head: 'left' | 'right'): QuarterTurn => (head === 'left' ? 90 : 270);

const TRUNK: readonly LandmarkName[] = ['nose', 'leftShoulder', 'rightShoulder', 'leftHip', 'rightHip', 'leftKnee', 'rightKnee'];

/** Mean visibility of the points that tell how a body lies; 0 for nobody. */
function bodySeen(landmarks: readonly Landmark[] | null): number {
  if (!landmarks) return 0;
  return TRUNK.reduce((sum, name) => sum + landmark(landmarks, name).visibility, 0) / TRUNK.length;
}

/** Where the head of a found pose points, from the hips to the shoulders, in the upright picture. */
export function headOf(landmarks: readonly Landmark[]): 'left' | 'right' {
  const middle = (a: LandmarkName, b: LandmarkName) => (landmark(landmarks, a).x + landmark(landmarks, b).x) / 2;
  return middle('leftShoulder', 'rightShoulder') < middle('leftHip', 'rightHip') ? 'left' : 'right';
}

/**
 * Which way a lying person's head points, from two fresh detections of one picture, drawn turned for each answer.
 * An answer that contradicts its own picture (drawn for a head at the left, yet the shoulders lie right of the hips) does not count.
 * @returns null when neither detection shows a lying person
 */
export function findHead(
  drawnForLeft: readonly Landmark[] | null,
  drawnForRight: readonly Landmark[] | null,
): 'left' | 'right' | null {
  const left = drawnForLeft && headOf(drawnForLeft) === 'left' ? bodySeen(drawnForLeft) : 0;
  const right = drawnForRight && headOf(drawnForRight) === 'right' ? bodySeen(drawnForRight) : 0;
  if (left === 0 && right === 0) return null;
  return left >= right ? 'left' : 'right';
}
