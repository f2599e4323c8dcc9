import type { JointAngle } from '../angles/joint-angle.ts';
import { median } from '../signal/median.ts';
import type { UnseenReason } from '../stickers/unseen-reason.ts';
import type { Ms } from '../units.ts';
import type { QualityWarning } from './set-result.ts';
import { SHORT_SEGMENT_PX, type StickerAngle, stickersOf } from './sticker-angle.ts';
import type { StickersSeen } from './stickers-seen.ts';

/** A sticker lost, or taken for something else, in more than this share of the frames is told. Chosen: half a second of half a minute. */
const TOLD_SHARE = 0.02;
/** Under this many frames a second quick movements are cut at the top. Chosen, as with the pose model. */
const LOW_RATE_FPS = 10;

interface Seen {
  readonly tMs: Ms;
  readonly stickers: StickersSeen | null;
}

/** What lowers the trust in a set by stickers. @param frames the angles of the samples, from when movements count */
export function stickerWarnings(
  samples: readonly Seen[],
  frames: readonly (StickerAngle | null)[],
  angle: JointAngle,
): readonly QualityWarning[] {
  const warnings: QualityWarning[] = [];
  const shortest = median(frames.flatMap((f) => (f ? [Math.min(...f.lengthsPx)] : [])));
  if (shortest !== null && shortest < SHORT_SEGMENT_PX) warnings.push('foot-small');
  const [first, last] = [samples[0], samples.at(-1)];
  if (first && last && samples.length > 10 && (samples.length - 1) * 1000 < LOW_RATE_FPS * (last.tMs - first.tMs)) {
    warnings.push('low-frame-rate');
  }
  const needed = stickersOf(angle);
  const lost = samples.filter(({ stickers }) => needed.some((name) => !stickers?.points[name])).length;
  const jumped = samples.filter(({ stickers }) => stickers?.implausible).length;
  if (lost > TOLD_SHARE * samples.length) warnings.push('sticker-lost');
  if (jumped > TOLD_SHARE * samples.length) warnings.push('sticker-jumped');
  const because = (why: UnseenReason): boolean =>
    samples.filter(({ stickers }) => needed.some((name) => stickers?.unseen?.[name] === why)).length >
    TOLD_SHARE * samples.length;
  if (because('glare')) warnings.push('sticker-glare');
  if (because('like-surround')) warnings.push('sticker-like-surround');
  return warnings;
}
