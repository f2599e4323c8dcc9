import { type Look, MOST_SIZE } from './look.ts';
import { distance } from './rgba-picture.ts';
import { MAX_GLARE } from './sticker-at.ts';
import type { Track } from './track.ts';
import type { UnseenReason } from './unseen-reason.ts';

/**
 * Why a sticker was not measured: what the picture shows where it is thought to be.
 * @param touching another sticker of its colour touches it: both together are no like ground
 */
export function unseenWhy(track: Track, look: Look, touching: boolean): UnseenReason {
  const { at, diameterPx, lost } = track;
  const there = look.all.filter((blob) => distance(blob.at, at) <= Math.max(diameterPx, blob.diameterPx / 2));
  if (look.burntAt(at) > MAX_GLARE || there.some((blob) => blob.glare > MAX_GLARE)) return 'glare';
  if (!touching && there.some((blob) => blob.cut || blob.diameterPx > MOST_SIZE * diameterPx)) return 'like-surround';
  return lost ? 'lost' : 'covered';
}
