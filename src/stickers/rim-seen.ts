import type { Choice } from './assign.ts';
import type { Blob } from './blob.ts';
import { distance, type RgbaPicture } from './rgba-picture.ts';
import { type Rim, rimOf } from './rim.ts';

/** How far another sticker must be from one whose rim is looked at, edge to edge, px. Chosen: a rim's profile, and what a place may be expected wrongly by. */
const RIM_CLEAR_PX = 4;

/** The rim of the blob that a track was given, where no other sticker comes near: where two meet, it is not its own. Null: only colour tells. */
export function rimSeen(picture: RgbaPicture, { track }: Choice, blob: Blob, choices: readonly Choice[]): Rim | null {
  const beside = (c: Choice): boolean =>
    c.track !== track &&
    blob !== null &&
    distance(c.expected, blob.at) < (c.track.diameterPx + track.diameterPx) / 2 + RIM_CLEAR_PX;
  return !choices.some(beside) ? rimOf(picture, blob.at, blob.diameterPx, track.rimPx) : null;
}
