import type { UnseenReason } from '../stickers/unseen-reason.ts';
import type { StickersSeen } from './stickers-seen.ts';

/** What can be done something about comes first. */
const MOST_USEFUL: readonly UnseenReason[] = ['glare', 'like-surround', 'covered', 'lost'];

/** Why not all stickers were measured in a frame; null: all were, or nothing is known of it. */
export function unseenOf(stickers: StickersSeen | null): UnseenReason | null {
  const reasons = Object.values(stickers?.unseen ?? {});
  return MOST_USEFUL.find((reason) => reasons.includes(reason)) ?? null;
}
