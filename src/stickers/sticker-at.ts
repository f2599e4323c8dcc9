import { fail, ok, type Result } from '../result.ts';
import { type ColourPair, chromaContrast } from './belonging.ts';
import { type Blob, blobsIn } from './blob.ts';
import { type Chroma, type ChromaPatch, chromaAround } from './chroma.ts';
import type { StickerRefusal } from './refusal.ts';
import { distance, type RgbaPicture, type Spot } from './rgba-picture.ts';
import { surroundOf } from './surround.ts';

/** A sticker as it looks under the present light. */
export interface Sticker {
  readonly at: Spot;
  readonly diameterPx: number;
  readonly roundness: number;
  readonly pair: ColourPair;
}

/** Least distance between a sticker's colour and its surround, in units of chroma. Chosen: five times what noise of 3 grey levels does to a dark pixel. */
export const MIN_CONTRAST = 0.25;
/** Smallest sticker, px. Chosen: centres of drawn discs stay within 0.1 px down to it, and video carries colour for two by two pixels only. */
export const MIN_DIAMETER_PX = 5;
/** A sticker seen aslant is an ellipse; what is longer than this is something else. Chosen: 55 degrees aslant. */
export const MIN_ROUNDNESS = 0.57;
/** Most of a sticker that a highlight may cover. Chosen: its centre is filled in, its edge could not be. */
export const MAX_GLARE = 0.3;
/** The patch that is looked at, in half widths of the seed, and how far a blob may lie from the seed, in the same. Chosen. */
const PATCH_REACH = 5;
const SEED_REACH = 1.5;

/** Where to look for a sticker: half the width of a box that lies within it. */
export interface Seed extends Spot {
  readonly halfPx: number;
}

/** The sticker that lies at a seed, or why that is none. */
export function stickerAt(picture: RgbaPicture, seed: Seed): Result<Sticker, StickerRefusal> {
  const patch = chromaAround(picture, seed.x, seed.y, PATCH_REACH * seed.halfPx + 6);
  const start = patch && firstLook(patch, seed);
  if (!patch || !start) return fail({ kind: 'too-small', diameterPx: 0, neededPx: MIN_DIAMETER_PX });
  // The colour of the first look is that of the seed's middle; of the second that of the whole blob, against a ring that fits it.
  let pair: ColourPair = start;
  let blob: Blob | null = null;
  for (let look = 0; look < 3; look++) {
    if (chromaContrast(pair) < MIN_CONTRAST) return fail(likeSurround(chromaContrast(pair)));
    blob = nearest(blobsIn(patch, pair), seed, SEED_REACH * seed.halfPx + 1);
    if (!blob) return fail({ kind: 'too-small', diameterPx: 0, neededPx: MIN_DIAMETER_PX });
    if (blob.cut) break;
    pair = { sticker: blob.colour, surround: surroundOf(patch, blob.at, blob.diameterPx, blob.colour) ?? pair.surround };
  }
  if (!blob || blob.cut) return fail(likeSurround(chromaContrast(pair)));
  return checked(blob, pair);
}

const likeSurround = (contrast: number, share = 0): StickerRefusal => ({
  kind: 'like-surround',
  contrast,
  neededContrast: MIN_CONTRAST,
  share,
});

function checked(blob: Blob, pair: ColourPair): Result<Sticker, StickerRefusal> {
  const { at, diameterPx, roundness, glare } = blob;
  const contrast = chromaContrast(pair);
  if (contrast < MIN_CONTRAST) return fail(likeSurround(contrast));
  if (diameterPx < MIN_DIAMETER_PX) return fail({ kind: 'too-small', diameterPx, neededPx: MIN_DIAMETER_PX });
  if (glare > MAX_GLARE) return fail({ kind: 'glare', share: glare, most: MAX_GLARE });
  if (roundness < MIN_ROUNDNESS) return fail({ kind: 'not-round', roundness, needed: MIN_ROUNDNESS });
  return ok({ at, diameterPx, roundness, pair });
}

/** The mean colour of the seed's middle, and of the ring around it. */
function firstLook(patch: ChromaPatch, seed: Seed): ColourPair | null {
  const reach = Math.max(1, seed.halfPx / 2);
  let count = 0;
  const sum = { redGreen: 0, yellowBlue: 0 };
  for (let i = 0; i < patch.redGreen.length; i++) {
    const x = patch.originX + (i % patch.width) - seed.x;
    const y = patch.originY + Math.floor(i / patch.width) - seed.y;
    if (Math.abs(x) > reach || Math.abs(y) > reach) continue;
    count++;
    sum.redGreen += patch.redGreen[i] as number;
    sum.yellowBlue += patch.yellowBlue[i] as number;
  }
  if (count === 0) return null;
  const sticker: Chroma = { redGreen: sum.redGreen / count, yellowBlue: sum.yellowBlue / count };
  const surround = surroundOf(patch, seed, 2 * seed.halfPx, sticker);
  return surround && { sticker, surround };
}

function nearest(blobs: readonly Blob[], to: Spot, withinPx: number): Blob | null {
  let best: Blob | null = null;
  for (const blob of blobs) {
    const far = distance(blob.at, to);
    if (far <= withinPx && (!best || far < distance(best.at, to))) best = blob;
  }
  return best;
}
