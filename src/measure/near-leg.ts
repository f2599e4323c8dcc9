import { type Landmark, landmark, type Side } from '../pose/landmarks.ts';
import { lineBetween } from './line-between.ts';

/**
 * Hip and knee of this side lie further from the camera than the other side's by more than this share of the thigh: the points are those of the turned-away leg.
 * Chosen: on 24 rendered clips the near side lies 1.4 to 2.5 thighs nearer in the model's own depth.
 */
const FAR_SHARE = 0.35;

/** Whether the model takes the leg of `side` for the one turned away from the camera: its own depth tells. */
export function isFarLeg(landmarks: readonly Landmark[], side: Side): boolean {
  const other: Side = side === 'left' ? 'right' : 'left';
  const depth = (of: Side) => landmark(landmarks, `${of}Knee`).z + landmark(landmarks, `${of}Hip`).z;
  const thighPx = lineBetween(landmark(landmarks, `${side}Hip`), landmark(landmarks, `${side}Knee`)).lengthPx;
  return depth(side) - depth(other) > 2 * FAR_SHARE * thighPx;
}
