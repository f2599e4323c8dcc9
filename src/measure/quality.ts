import type { PictureSize } from '../capture/frame.ts';
import type { Exercise } from '../exercises/exercise.ts';
import { median } from '../signal/median.ts';
import type { Deg } from '../units.ts';
import type { AngleInFrame } from './angle-series.ts';
import { cameraMoved } from './camera-roll.ts';
import { type LegSample, legLines } from './leg-sample.ts';
import type { QualityWarning, SetResult } from './set-result.ts';

/** A foot shorter than this in the picture carries too few pixels for its turning. From the keypoint-noise table: 40 px give 4 degrees at 2 px. */
const SMALL_FOOT_PX = 30;
/** Measured in fewer frames than this share: lost too often. Chosen. */
const OFTEN_LOST_SHARE = 0.85;
/** Under this many frames a second quick movements are cut at the top. Chosen: four samples for a tap of 400 ms. */
const LOW_RATE_FPS = 10;
/** Fewer frames than this share measured by the picture's motion: the leg shows too little texture. Chosen. */
const LITTLE_TEXTURE_SHARE = 0.5;

/** A camera turned further than this off the side is named. From the geometry: beyond, a raised leg is off by more than a degree. */
const TURNED_DEG = 15;

/** What is known of the view beside the samples. */
interface View {
  readonly size: PictureSize;
  /** Index of the first sample that counts: a camera may be moved before. */
  readonly from: number;
  readonly cameraTurnDeg: Deg | null;
}

/** What lowers the trust in a whole set. */
export function qualityOf(
  samples: readonly LegSample[],
  frames: readonly (AngleInFrame | null)[],
  exercise: Exercise,
  { size, from, cameraTurnDeg }: View,
): SetResult['quality'] {
  const warnings: QualityWarning[] = [];
  const feet = samples.flatMap((s) => (s.points ? [legLines(s.points).foot.lengthPx] : []));
  const foot = median(feet);
  if (exercise.angle === 'ankle-dorsiflexion' && foot !== null && foot < SMALL_FOOT_PX) warnings.push('foot-small');
  const outside = samples.filter((s) => s.points && !withinPicture(s.points.ankle, size)).length;
  if (outside > 0.2 * samples.length) warnings.push('leg-hidden');
  const measured = frames.filter((f) => f !== null);
  if (frames.length > 0 && measured.length < OFTEN_LOST_SHARE * frames.length) warnings.push('often-lost');
  const first = samples[0];
  const last = samples[samples.length - 1];
  if (first && last && samples.length > 10) {
    const fps = ((samples.length - 1) * 1000) / (last.tMs - first.tMs);
    if (fps < LOW_RATE_FPS) warnings.push('low-frame-rate');
  }
  const withMotion = samples.some((s) => s.motion !== null);
  const byFlow = measured.filter((f) => f.source === 'flow').length;
  if (withMotion && byFlow < LITTLE_TEXTURE_SHARE * measured.length) warnings.push('little-texture');
  if (cameraTurnDeg !== null && Math.abs(cameraTurnDeg) > TURNED_DEG) warnings.push('camera-turned');
  if (cameraMoved(samples, from)) warnings.push('camera-moved');
  return { cameraTurnDeg, warnings };
}

/** Whether a point lies in the picture. */
export const withinPicture = (p: { readonly x: number; readonly y: number }, size: PictureSize): boolean =>
  p.x >= 0 && p.y >= 0 && p.x <= size.width && p.y <= size.height;
