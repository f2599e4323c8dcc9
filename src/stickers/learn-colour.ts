import { fail, ok, type Result } from '../result.ts';
import { chromaContrast } from './belonging.ts';
import { chromaAround, chromaOf } from './chroma.ts';
import type { StickerRefusal } from './refusal.ts';
import { distance, type RgbaPicture, type Spot } from './rgba-picture.ts';
import { MAX_SHARE, shareOf } from './same-colour.ts';
import { seedsIn } from './seeds.ts';
import { MIN_CONTRAST, MIN_DIAMETER_PX, type Sticker, stickerAt } from './sticker-at.ts';

/** How far beside a sticker's edge a finger may tap, and how much of the picture around a tap is searched, px. Chosen. */
const TAP_SLIP_PX = 12;
const TAP_REACH_PX = 100;
/** Cells for the whole picture, px. Chosen: a quarter of the time, and less noise. */
export const WHOLE_STEP = 2;

/**
 * Learns from one tap what a sticker looks like under the present light.
 * @param tap px of the picture, on the sticker or just beside it
 */
export function learnColour(picture: RgbaPicture, tap: Spot): Result<Sticker, StickerRefusal> {
  const none: StickerRefusal = { kind: 'like-surround', contrast: 0, neededContrast: MIN_CONTRAST, share: 0 };
  let why: StickerRefusal | null = null;
  // Small cells first: a sticker of 5 px is a single cell of 2.
  for (const step of [1, WHOLE_STEP]) {
    const near = chromaAround(picture, tap.x, tap.y, TAP_REACH_PX, step);
    if (!near) return fail(none);
    for (const seed of seedsIn(near)) {
      if (distance(seed, tap) > seed.halfPx + TAP_SLIP_PX) continue;
      const found = stickerAt(picture, seed);
      if (found.ok && distance(found.value.at, tap) <= found.value.diameterPx / 2 + TAP_SLIP_PX)
        return notEverywhere(picture, found.value);
      if (!found.ok) why ??= found.error;
    }
  }
  return fail(why ?? smallOrNone(picture, tap) ?? none);
}

/** Refuses a sticker whose colour much of the picture has. */
function notEverywhere(picture: RgbaPicture, sticker: Sticker): Result<Sticker, StickerRefusal> {
  const share = shareOf(chromaOf(picture, WHOLE_STEP), sticker.pair);
  // Three of them are there by right.
  const own = (3 * Math.PI * (sticker.diameterPx / 2) ** 2) / (picture.width * picture.height);
  if (share - own > MAX_SHARE) {
    return fail({ kind: 'like-surround', contrast: chromaContrast(sticker.pair), neededContrast: MIN_CONTRAST, share });
  }
  return ok(sticker);
}

/** A tap on a dot too small to be a seed. */
function smallOrNone(picture: RgbaPicture, tap: Spot): StickerRefusal | null {
  const found = stickerAt(picture, { ...tap, halfPx: MIN_DIAMETER_PX / 2 });
  return found.ok ? null : found.error;
}
