import { median } from '../../src/signal/median.ts';

/** A frame of a clip's truth: the angle between the places where its stickers were drawn, from rest; none in clips without. */
export interface DrawnFrame {
  readonly tMs: number;
  readonly toeInPictureDeg?: number | undefined;
  readonly ankleInPictureDeg?: number | undefined;
}

interface Span {
  readonly startMs: number;
  readonly endMs: number;
}

/** So long before a movement tells where it starts from, ms. */
const REST_MS = 300;

/** The angle between the places where stickers were drawn, from rest; undefined: the clip has none. */
export const betweenStickersDeg = (frame: DrawnFrame): number | undefined => frame.toeInPictureDeg ?? frame.ankleInPictureDeg;

/**
 * How far the toe, or the foot, truly turned in the picture in a repetition, deg. Between quick ones the rest is shorter than REST_MS: what came before is not
 * part of it.
 */
export function rangeBetweenStickers(
  { frames, reps }: { readonly frames: readonly DrawnFrame[]; readonly reps: readonly Span[] },
  { startMs, endMs }: Span,
): number {
  const doneMs = Math.max(0, ...reps.flatMap((rep) => (rep.endMs <= startMs ? [rep.endMs] : [])));
  const angles = (from: number, to: number) =>
    frames.flatMap((frame) => (frame.tMs >= from && frame.tMs <= to ? [betweenStickersDeg(frame) ?? Number.NaN] : []));
  return Math.max(...angles(startMs, endMs)) - (median(angles(Math.max(startMs - REST_MS, doneMs), startMs)) ?? 0);
}
