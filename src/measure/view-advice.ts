import type { PictureSize } from '../capture/frame.ts';
import type { Exercise } from '../exercises/exercise.ts';
import type { Posture } from '../pose/head-up.ts';
import { type Landmark, landmark, type Side } from '../pose/landmarks.ts';
import { isTooTurned, turnSeen } from './camera-turn.ts';
import { bodyPoints, legLines, otherSide } from './leg-sample.ts';
import type { ViewAdvice } from './live-view.ts';
import { isFarLeg } from './near-leg.ts';
import type { Observation } from './observation.ts';
import { isOtherUp } from './other-legs-points.ts';
import { inPosture } from './posture.ts';

/** Under this mean brightness (of 255) a webcam's picture is mostly noise. Chosen; the dim test clip has 45. */
export const DARK = 28;
/** The near leg's points must be seen with at least this visibility. Chosen. */
const SEEN = 0.35;
/** A foot shorter than this share of the picture's width turns by too few pixels. Chosen: 26 px of 640. */
const SMALL_FOOT_SHARE = 0.04;
/** Shoulders, or hips, further apart than this share of the trunk's length: the person faces the camera. Chosen: 30 degrees off give about 0.4. */
const TURNED_SHARE = 0.5;
const NOT_IN = { upright: 'not-sitting', lying: 'not-lying', standing: 'not-standing' } as const satisfies Record<
  Posture,
  ViewAdvice
>;

/** What to change in front of the camera, most urgent first; empty when the view is good. */
export function viewAdvice(
  { landmarks, brightness }: Observation,
  exercise: Exercise,
  side: Side,
  size: PictureSize,
): readonly ViewAdvice[] {
  const dark: readonly ViewAdvice[] = brightness !== null && brightness < DARK ? ['too-dark'] : [];
  if (!landmarks) return [...dark, 'nobody'];
  const advice: ViewAdvice[] = [...dark];
  const points = bodyPoints(landmarks, side);
  const lines = legLines(points);
  const leg = [points.hip, points.knee, points.ankle, points.heel, points.toe];
  const outside = leg.filter((p) => p.x < 0 || p.y < 0 || p.x > size.width || p.y > size.height).length;
  const unseen = (['Knee', 'Ankle', 'Toe'] as const).some((n) => landmark(landmarks, `${side}${n}`).visibility < SEEN);
  const shownLength = Math.hypot(size.width, size.height);
  const body = Math.hypot(points.shoulder.x - points.ankle.x, points.shoulder.y - points.ankle.y);
  if (outside > 0 && body > 0.5 * shownLength) advice.push('too-near');
  else if (outside > 0 || unseen) advice.push('leg-hidden');
  if (lines.foot.lengthPx < SMALL_FOOT_SHARE * size.width) advice.push('too-far');
  const acrossTheTrunk = turnedShare(landmarks, points.shoulder, points.hip) > TURNED_SHARE;
  const other = otherSide(landmarks, side);
  if (acrossTheTrunk || isTooTurned(turnSeen(points, other, exercise.posture))) advice.push('not-side-on');
  else if (isFarLeg(landmarks, side)) advice.push('wrong-leg');
  else if (exercise.heldLeg && isOtherUp({ points, other })) advice.push('other-leg-up');
  if (advice.length === 0 && !inPosture(points, exercise.posture)) advice.push(NOT_IN[exercise.posture]);
  return advice;
}

interface At {
  readonly x: number;
  readonly y: number;
}

/** How far apart left and right lie across the trunk's line, in trunk lengths; near 0 from the side, about 0.7 from the front. */
function turnedShare(landmarks: readonly Landmark[], shoulder: At, hip: At): number {
  const dx = hip.x - shoulder.x;
  const dy = hip.y - shoulder.y;
  const trunk = Math.hypot(dx, dy) || 1;
  const across = (a: At, b: At) => Math.abs((b.x - a.x) * dy - (b.y - a.y) * dx) / trunk;
  const shoulders = across(landmark(landmarks, 'leftShoulder'), landmark(landmarks, 'rightShoulder'));
  const hips = across(landmark(landmarks, 'leftHip'), landmark(landmarks, 'rightHip'));
  return (shoulders + hips) / 2 / trunk;
}
