import type { JointAngle } from '../angles/joint-angle.ts';
import type { ViewAdvice } from './live-view.ts';
import type { Observation } from './observation.ts';
import { SHORT_SEGMENT_PX, type StickerAngle, stickersOf } from './sticker-angle.ts';
import { DARK } from './view-advice.ts';

/** What to change before a set by stickers can start, most urgent first; empty when they are well seen. */
export function stickerAdvice(
  { stickers = null, brightness }: Observation,
  angle: JointAngle,
  seen: StickerAngle | null,
): readonly ViewAdvice[] {
  const dark: readonly ViewAdvice[] = brightness !== null && brightness < DARK ? ['too-dark'] : [];
  const all = seen !== null && stickersOf(angle).every((name) => stickers?.points[name]?.bridged === false);
  if (!all) return [...dark, 'stickers-missing'];
  return Math.min(...seen.lengthsPx) < SHORT_SEGMENT_PX ? [...dark, 'stickers-small'] : dark;
}
