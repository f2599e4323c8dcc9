import type { StickersSeen } from '../measure/stickers-seen.ts';
import type { SeenSticker } from '../stickers/follow.ts';
import type { MeasuredSpot } from '../stickers/line-angle.ts';
import type { Spot } from '../stickers/rgba-picture.ts';
import type { Sticker } from '../stickers/sticker-at.ts';
import type { StickerName } from '../stickers/sticker-name.ts';
import { px } from '../units.ts';
import type { NamedStickers } from './sticker-start.ts';

/** Between px of the picture that is looked at, whose pixels' centres lie on whole numbers, and of the upright picture itself, whose edge is 0. */
export const toFull = ({ x, y }: Spot, scale: number): Spot => ({ x: (x + 0.5) * scale, y: (y + 0.5) * scale });
export const fromFull = ({ x, y }: Spot, scale: number): Spot => ({ x: x / scale - 0.5, y: y / scale - 0.5 });

export const stickerToFull = (s: Sticker, scale: number): Sticker => ({
  ...s,
  at: toFull(s.at, scale),
  diameterPx: s.diameterPx * scale,
});
export const stickerFromFull = (s: Sticker, scale: number): Sticker => ({
  ...s,
  at: fromFull(s.at, scale),
  diameterPx: s.diameterPx / scale,
});

export const namedWith = (named: NamedStickers, change: (sticker: Sticker) => Sticker): NamedStickers =>
  Object.fromEntries(Object.entries(named).map(([name, sticker]) => [name, change(sticker)]));

/** What was seen of stickers, or of points on skin, as the measurement takes it. */
export function seenToFull(
  stickers: Readonly<Partial<Record<StickerName, SeenSticker | MeasuredSpot | null>>>,
  implausible: boolean,
  scale: number,
  unseen: NonNullable<StickersSeen['unseen']> = {},
): StickersSeen {
  const points = Object.entries(stickers).map(([name, seen]) => {
    if (!seen) return [name, null];
    const { x, y } = toFull(seen.at, scale);
    return [name, { x: px(x), y: px(y), errorPx: px(seen.errorPx * scale), bridged: 'how' in seen && seen.how === 'bridged' }];
  });
  const said = Object.keys(unseen).length > 0 ? { unseen } : {};
  return { points: Object.fromEntries(points), implausible, ...said };
}
