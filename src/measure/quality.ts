import type { PictureSize } from '../capture/frame.ts';
import type { Exercise } from '../exercises/exercise.ts';
import { median } from '../signal/median.ts';
import type { Deg } from '../units.ts';
import type { AngleInFrame } from './angle-series.ts';
import { cameraMoved } from './camera-roll.ts';
import { isTooTurned, TURNED_DEG } from './camera-turn.ts';
import { type LegSample, legLines } from './leg-sample.ts';
import type { QualityWarning, SetResult } from './set-result.ts';

/** A foot shorter than this in the picture carries too few pixels for its turning. From the keypoint-noise table: 40 px give 4 degrees at 2 px. */
const SMALL_FOOT_PX = 30;
/** The ankle outside the picture in more than this share of the poses. Chosen. */
const OUTSIDE_SHARE = 0.2;
/** Not measured for more than this share of the time: lost too often. Chosen. */
const OFTEN_LOST_SHARE = 0.15;
/** Under this many frames a second quick movements are cut at the top. Chosen: four samples for a tap of 400 ms. */
const LOW_RATE_FPS = 10;
/** Fewer poses than this share measured by the picture's motion: the leg shows too little texture. Chosen. */
const LITTLE_TEXTURE_SHARE = 0.5;

/** Points not to be believed in more than this share of the frames are named. Chosen. */
const STRAY_SHARE = 0.05;
/** What is known of the view beside the samples. */
interface View {
  readonly size: PictureSize;
  /** Index of the first sample that counts: a camera may be moved before. */
  readonly from: number;
  readonly cameraTurnDeg: Deg | null;
  /** The leg asked for is the one turned away from the camera. */
  readonly far: boolean;
  /** The leg that was held up is not the one asked for. */
  readonly otherUp: boolean;
  /** Share of the frames whose points are not to be believed. */
  readonly strayShare: number;
}

/** What lowers the trust in a whole set. */
export function qualityOf(
  samples: readonly LegSample[],
  frames: readonly (AngleInFrame | null)[],
  exercise: Exercise,
  { size, from, cameraTurnDeg, far, otherUp, strayShare }: View,
): SetResult['quality'] {
  if (far) return { cameraTurnDeg: null, warnings: ['far-leg'] };
  if (otherUp) return { cameraTurnDeg: null, warnings: ['other-leg-up'] };
  if (isTooTurned(cameraTurnDeg)) return { cameraTurnDeg, warnings: ['camera-too-turned'] };
  const warnings: QualityWarning[] = [];
  const feet = samples.flatMap((s) => (s.points ? [legLines(s.points).foot.lengthPx] : []));
  const foot = median(feet);
  if (exercise.angle === 'ankle-dorsiflexion' && foot !== null && foot < SMALL_FOOT_PX) warnings.push('foot-small');
  const outside = samples.filter((s) => s.points && !withinPicture(s.points.ankle, size)).length;
  if (outside > OUTSIDE_SHARE * feet.length) warnings.push('leg-hidden');
  if (lostShare(samples, frames) > OFTEN_LOST_SHARE) warnings.push('often-lost');
  const first = samples[0];
  const last = samples[samples.length - 1];
  if (first && last && samples.length > 10) {
    const fps = ((samples.length - 1) * 1000) / (last.tMs - first.tMs);
    if (fps < LOW_RATE_FPS) warnings.push('low-frame-rate');
  }
  const withMotion = samples.some((s) => s.motion !== null);
  // Frames without a pose are there only where the motion was followed: they say nothing of how often it is not.
  const posed = frames.filter((f, i) => f !== null && samples[i]?.points);
  const byFlow = posed.filter((f) => f?.source === 'flow').length;
  if (withMotion && byFlow < LITTLE_TEXTURE_SHARE * posed.length) warnings.push('little-texture');
  if (cameraTurnDeg !== null && Math.abs(cameraTurnDeg) > TURNED_DEG) warnings.push('camera-turned');
  if (strayShare > STRAY_SHARE) warnings.push('points-jumped');
  if (cameraMoved(samples, from)) warnings.push('camera-moved');
  return { cameraTurnDeg, warnings };
}

/** Share of the time in which the angle was not measured, each frame standing for the time since the one before. */
function lostShare(samples: readonly LegSample[], frames: readonly (AngleInFrame | null)[]): number {
  let lostMs = 0;
  let allMs = 0;
  for (let i = 1; i < samples.length; i++) {
    const dtMs = (samples[i] as LegSample).tMs - (samples[i - 1] as LegSample).tMs;
    allMs += dtMs;
    if (!frames[i]) lostMs += dtMs;
  }
  return allMs > 0 ? lostMs / allMs : 0;
}

/** Whether a point lies in the picture. */
export const withinPicture = (p: { readonly x: number; readonly y: number }, size: PictureSize): boolean =>
  p.x >= 0 && p.y >= 0 && p.x <= size.width && p.y <= size.height;
