import type { ColourPair } from './belonging.ts';
import { coreOf } from './belonging.ts';
import { type Chroma, type ChromaPatch, chromaDistance } from './chroma.ts';

/** Stickers of one colour differ by less than this through shade, in units of chroma. Chosen: half of what a sticker differs from its surround. */
const SAME_COLOUR = 0.22;
/** Most of the picture that may have a sticker's colour outside the stickers. Chosen: a block of 55 x 55 px of 640 x 480. */
export const MAX_SHARE = 0.01;

export const sameColour = (p: Chroma, q: Chroma): boolean => chromaDistance(p, q) <= SAME_COLOUR;

/** Share of a picture that has the colour of a sticker, its own pixels included. @param whole the chroma of the whole picture */
export function shareOf(whole: ChromaPatch, pair: ColourPair): number {
  let count = 0;
  const core = coreOf(whole, pair);
  for (const v of core) count += v;
  return count / core.length;
}
