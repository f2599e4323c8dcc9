import { distance, type Spot } from './rgba-picture.ts';
import type { StickerName } from './sticker-name.ts';

/** Stickers that sit on the same bone, nearly: their distance changes only with the view. */
export const SEGMENTS = [
  ['tip', 'knuckle'],
  ['knuckle', 'arch'],
  ['shin', 'ankle'],
  ['ankle', 'forefoot'],
] as const satisfies readonly (readonly [StickerName, StickerName])[];

/** A segment's length as it usually is, px; by its place in SEGMENTS, null where its stickers are not both followed. */
export type UsualLengths = readonly (number | null)[];

/** Most that a segment's length may change by perspective, either way, as a factor. Chosen: a segment turned by 40 degrees out of the picture's plane. */
export const LENGTH_TOLERANCE = 1.3;
/** Time constant with which the usual length follows a foot that comes nearer, ms. Chosen: ten times as slow as a lift. */
const LENGTH_MS = 5000;

type SpotOf = (name: StickerName) => Spot | null;

/** The lengths of all segments of which both ends are known. */
export const lengthsOf = (at: SpotOf): UsualLengths =>
  SEGMENTS.map(([a, b]) => {
    const p = at(a);
    const q = at(b);
    return p && q ? distance(p, q) : null;
  });

/** How many times as long as usual each segment is; null where that is not known. */
export const stretchOf = (usual: UsualLengths, now: UsualLengths): readonly (number | null)[] =>
  SEGMENTS.map((_, i) => {
    const before = usual[i] ?? null;
    const here = now[i] ?? null;
    return before === null || here === null ? null : here / before;
  });

export const plausible = (stretch: number): boolean => stretch <= LENGTH_TOLERANCE && stretch >= 1 / LENGTH_TOLERANCE;

/** The usual lengths after a frame; what is implausible changes none. */
export function followedLengths(usual: UsualLengths, now: UsualLengths, dtMs: number): UsualLengths {
  const share = 1 - Math.exp(-dtMs / LENGTH_MS);
  const stretch = stretchOf(usual, now);
  return usual.map((before, i) => {
    const s = stretch[i] ?? null;
    return before === null || s === null || !plausible(s) ? before : before * (1 + share * (s - 1));
  });
}
