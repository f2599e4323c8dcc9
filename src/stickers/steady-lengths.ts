import type { Ms } from '../units.ts';
import type { UsualLengths } from './chains.ts';

/** A segment's length when it was last believed. */
interface SteadyLength {
  readonly px: number;
  readonly tMs: Ms;
}

/** By a segment's place in SEGMENTS; null: never believed yet. */
export type SteadyLengths = readonly (SteadyLength | null)[];

/**
 * From one frame to the next a bone's length in the picture hardly changes, even where skin moves over it: by at most this share at once, and so much more each ms. What
 * changes more is another thing of a sticker's colour in its place. After 0.8 s any length that is plausible is believed again. Measured on drawn scenes
 * (tests/stickers/scenes.test.ts): 99 % of right frames change by less than 0.03, wrong ones by 0.07 and more.
 */
const AT_ONCE_SHARE = 0.05;
const SHARE_A_MS = 0.0003;
/** Less than this is the scatter of centres, px. Chosen: ten times their error. */
const SCATTER_PX = 1.5;

/** @returns how many times as long as when it was last believed a segment is, where that is no bone's; null where it may be one's, or is not known */
export function jumpOf(before: SteadyLength | null, now: number | null, tMs: Ms): number | null {
  if (!before || now === null) return null;
  const limit = Math.max(SCATTER_PX, before.px * (AT_ONCE_SHARE + SHARE_A_MS * (tMs - before.tMs)));
  return Math.abs(now - before.px) > limit ? now / before.px : null;
}

/** The lengths after a frame. @param believed by a segment's place: whether it is one's own bone */
export const steadyAfter = (
  before: SteadyLengths,
  now: UsualLengths,
  believed: (place: number) => boolean,
  tMs: Ms,
): SteadyLengths => now.map((length, i) => (length !== null && believed(i) ? { px: length, tMs } : (before[i] ?? null)));
