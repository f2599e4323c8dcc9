import type { Ms, Px, Ratio } from '../units.ts';

/** The 33 points of the pose model, by the model's own index. Source: the published topology of the BlazePose model card. */
export const LANDMARK = {
  nose: 0,
  leftEar: 7,
  rightEar: 8,
  leftShoulder: 11,
  rightShoulder: 12,
  leftElbow: 13,
  rightElbow: 14,
  leftWrist: 15,
  rightWrist: 16,
  leftHip: 23,
  rightHip: 24,
  leftKnee: 25,
  rightKnee: 26,
  leftAnkle: 27,
  rightAnkle: 28,
  leftHeel: 29,
  rightHeel: 30,
  leftToe: 31,
  rightToe: 32,
} as const;
export type LandmarkName = keyof typeof LANDMARK;
export const LANDMARK_COUNT = 33;

/** One point of the body in the upright picture. */
export interface Landmark {
  /** px, to the right. */
  readonly x: Px;
  /** px, down. */
  readonly y: Px;
  /** Depth relative to the hips in px of the same scale, nearer to the camera is smaller. Rough: order only. */
  readonly z: Px;
  /** The model's own guess that the point is seen, 0 to 1; it lags by 10 to 20 frames. */
  readonly visibility: Ratio;
}

/** What the pose model says of one frame: 33 landmarks, or null when it sees nobody. */
export interface PoseFrame {
  readonly tMs: Ms;
  readonly landmarks: readonly Landmark[] | null;
}

/** The side of the body, the person's own. */
export type Side = 'left' | 'right';

/** The landmark called `name`; throws when the list is not a full pose. */
export function landmark(landmarks: readonly Landmark[], name: LandmarkName): Landmark {
  const found = landmarks[LANDMARK[name]];
  if (!found) throw new Error(`landmark requires ${LANDMARK_COUNT} landmarks, got ${landmarks.length}`);
  return found;
}
