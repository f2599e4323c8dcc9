import { ankleDorsiflexion, type Facing } from '../angles/joint-angle.ts';
import type { PictureSize } from '../capture/frame.ts';
import { median } from '../signal/median.ts';
import { type Deg, deg, type Ms } from '../units.ts';
import { firstAtLeast } from './first-at-least.ts';
import { type LegSample, legLines } from './leg-sample.ts';
import { withinPicture } from './quality.ts';

/**
 * Half the width of the 95 % interval of a lying person's ankle angle, which the landmarks alone tell. On the three rendered leg raise clips it read
 * 3 to 8 degrees too high in the middle, and nine frames in ten lay between 4 too low and 11 too high (feet that hardly move against the shank).
 */
export const FOOT_UNCERTAINTY_DEG = deg(12);
/** The foot is read over this time before and after the peak, ms. Chosen: the landmarks scatter by some degrees from frame to frame. */
const AROUND_MS = 250;

/**
 * Where the foot stood at the peak of a leg raise: ankle dorsiflexion, since it changes how far a leg goes by 5 to 10 degrees
 * (Boyd et al. 2009, J Orthop Sports Phys Ther 39:780).
 * @param samples in order of time
 * @returns null when heel or toe were not seen in the picture about then
 */
export function footAt(samples: readonly LegSample[], peakMs: Ms, facing: Facing, size: PictureSize): Deg | null {
  const seen: number[] = [];
  // From a little earlier: which frames are near is for one comparison alone to say.
  for (let i = firstAtLeast(samples, peakMs - AROUND_MS - 1, ({ tMs }) => tMs); i < samples.length; i++) {
    const { tMs, points } = samples[i] as LegSample;
    if (tMs > peakMs + AROUND_MS + 1) break;
    if (!points || Math.abs(tMs - peakMs) > AROUND_MS) continue;
    if (withinPicture(points.heel, size) && withinPicture(points.toe, size))
      seen.push(ankleDorsiflexion(legLines(points), facing));
  }
  const middle = median(seen);
  return middle === null ? null : deg(middle);
}
