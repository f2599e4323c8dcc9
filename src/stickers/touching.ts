import type { Choice } from './assign.ts';
import type { Blob } from './blob.ts';
import { distance, type Spot } from './rgba-picture.ts';
import { sameColour } from './same-colour.ts';
import type { StickerName } from './sticker-name.ts';

/** Gap below which two stickers of one colour run together in the picture, px. Chosen: two blurred edges. */
const JOINING_PX = 3;

/**
 * Stickers of one colour that touch or cover each other: neither can be measured alone, but both together can.
 * @param blobs what each choice was given
 * @param all every blob in a track's window, whole or not
 * @returns by choice: how far the expected place must be moved so that the pair's middle is where the picture has it; null for one that touches none
 */
export function touching(
  choices: readonly Choice[],
  blobs: readonly (Blob | null)[],
  all: (name: StickerName) => readonly Blob[],
): readonly (Spot | null)[] {
  const shifts: (Spot | null)[] = choices.map(() => null);
  choices.forEach((a, i) => {
    choices.slice(i + 1).forEach((b, k) => {
      const j = i + 1 + k;
      // Both measured, and not one of them alone in the middle of both.
      if (blobs[i] && blobs[j]) return;
      if (!sameColour(a.track.pair.sticker, b.track.pair.sticker)) return;
      const size = (a.track.diameterPx + b.track.diameterPx) / 2;
      if (distance(a.expected, b.expected) > size + JOINING_PX) return;
      const middle = { x: (a.expected.x + b.expected.x) / 2, y: (a.expected.y + b.expected.y) / 2 };
      const joint = all(a.track.name).find((blob) => distance(blob.at, middle) < size / 2 + JOINING_PX);
      if (!joint) return;
      const shift = { x: joint.at.x - middle.x, y: joint.at.y - middle.y };
      shifts[i] = shift;
      shifts[j] = shift;
    });
  });
  return shifts;
}
