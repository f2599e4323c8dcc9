import KalmanFilter from 'kalmanjs';
import { type Deg, deg } from '../units.ts';

/**
 * The live estimate of a segment's direction: its rate comes from the picture's motion, its level from the landmarks.
 * Lag: none for the motion (it enters as the filter's control input), about LEVEL_FOLLOWS for the level. A gap keeps the last value
 * and widens its variance. Peaks: as high as the motion says; without motion they are as low as the landmarks' and a little later.
 */
export interface LiveDirection {
  readonly deg: Deg;
  /** Variance of `deg`, deg^2. */
  readonly variance: number;
}

/** Standard deviation of a landmark direction about the truth, deg. Mostly not noise but a habit of the model (it shrinks movement), hence wide. */
const LANDMARK_SD = 12;
/** What is added to the variance for each second that the motion carries, deg^2/s: an alignment's error does not grow, so this only lets the level follow. Chosen. */
const CARRIED_VARIANCE = 0.03;
/** The same without motion, when only landmarks are there: a segment may turn by this much in a second, deg^2/s. Chosen: 90 deg/s. */
const FREE_VARIANCE = 8100;
/** Landmarks alone are trusted this far, deg; smaller than above because nothing else tells of the movement. */
const LANDMARK_ALONE_SD = 3;

/**
 * One step of the filter.
 * @param state null before the first landmark
 * @param dtMs time since the last step, at least 0
 * @param landmarkDeg unwrapped direction seen by the landmarks, or null
 * @param turnedDeg how far the picture says the segment has turned since the last step, or null
 */
export function stepDirection(
  state: LiveDirection | null,
  dtMs: number,
  landmarkDeg: number | null,
  turnedDeg: number | null,
): LiveDirection | null {
  if (!state) return landmarkDeg === null ? null : { deg: deg(landmarkDeg), variance: LANDMARK_SD ** 2 };
  const carried = turnedDeg !== null;
  const processVariance = ((carried ? CARRIED_VARIANCE : FREE_VARIANCE) * dtMs) / 1000;
  if (landmarkDeg === null) {
    return { deg: deg(state.deg + (turnedDeg ?? 0)), variance: state.variance + processVariance };
  }
  const measured = (carried ? LANDMARK_SD : LANDMARK_ALONE_SD) ** 2;
  const filter = new KalmanFilter({ R: processVariance, Q: measured, A: 1, B: 1, C: 1 });
  filter.x = state.deg;
  filter.cov = state.variance;
  const next = filter.filter(landmarkDeg, turnedDeg ?? 0);
  return { deg: deg(next), variance: filter.cov };
}
