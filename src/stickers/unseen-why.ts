import type { Ms } from '../units.ts';
import { type Look, MOST_SIZE } from './look.ts';
import { distance } from './rgba-picture.ts';
import { MAX_GLARE } from './sticker-at.ts';
import type { StickerName } from './sticker-name.ts';
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

/** What hid a sticker stands for so long after it was last seen to, ms: a toe that moves meanwhile takes the place where it could be seen along. Chosen: a slow lift. */
const STANDS_MS = 3000;

/** What was last seen to hide a sticker, by its name. */
export type Hinders = Readonly<Partial<Record<StickerName, { readonly why: UnseenReason; readonly tMs: Ms }>>>;
/** Why stickers are not measured, by name. */
export type Unseen = Readonly<Partial<Record<StickerName, UnseenReason>>>;

/** What was found in a picture, and for a sticker whose place is no longer known what hid it shortly before. @param now what the picture alone tells */
export function unseenAfter(before: Hinders, now: Unseen, tMs: Ms): { readonly unseen: Unseen; readonly hinders: Hinders } {
  const names = Object.keys(now) as StickerName[];
  const hinders: Hinders = Object.fromEntries(
    names.flatMap((name) => {
      const why = now[name];
      const last = before[name];
      if (why === 'glare' || why === 'like-surround') return [[name, { why, tMs }]];
      return why === 'lost' && last && tMs - last.tMs <= STANDS_MS ? [[name, last]] : [];
    }),
  );
  return { unseen: Object.fromEntries(names.map((name) => [name, hinders[name]?.why ?? now[name]])), hinders };
}
