import type { Facing } from '../angles/joint-angle.ts';
import type { PictureSize } from '../capture/frame.ts';
import { median } from '../signal/median.ts';
import { type Deg, deg, degOfRad } from '../units.ts';
import type { LegSample } from './leg-sample.ts';

/** Focal length as a share of the picture's longer side. Chosen: a webcam sees 60 to 70 degrees across, which makes 0.71 to 0.87. */
const FOCAL_SHARE = 0.75;
/** Never more than this is taken out. Chosen: the camera's turn is off by up to 10 degrees beside a raised leg. */
const MOST_DEG = 35;

/**
 * How far off the side a lying person's foot is seen: it lies at the picture's edge, where even a camera that stands square looks along at a slant, and a turned one adds to that.
 * @param cameraTurnDeg towards the feet positive; null: not known, taken as none
 * @returns from the head's side positive, deg; null when the foot was never seen
 */
export function footView(
  samples: readonly LegSample[],
  { width, height }: PictureSize,
  facing: Facing,
  cameraTurnDeg: Deg | null,
): Deg | null {
  const x = median(samples.flatMap(({ points }) => (points ? [points.ankle.x] : [])));
  if (x === null) return null;
  const towardsFeet = facing === 'left' ? width / 2 - x : x - width / 2;
  const slant = degOfRad(Math.atan(towardsFeet / (FOCAL_SHARE * Math.max(width, height))));
  return deg(Math.max(-MOST_DEG, Math.min(MOST_DEG, slant - (cameraTurnDeg ?? 0))));
}
