import type { StickerName } from '../stickers/sticker-name.ts';
import type { UnseenReason } from '../stickers/unseen-reason.ts';
import type { Px } from '../units.ts';

/** Where a sticker is in one frame, px of the upright picture. */
export interface StickerPoint {
  readonly x: Px;
  readonly y: Px;
  /** Standard error of the place, each way. */
  readonly errorPx: Px;
  /** Hidden for a moment, and put where its motion led. */
  readonly bridged: boolean;
}

/** What was seen of the stickers in one frame. */
export interface StickersSeen {
  /** By name; null: lost. Names that are not followed are not in it. */
  readonly points: Readonly<Partial<Record<StickerName, StickerPoint | null>>>;
  /** Two stickers of one bone are further apart, or nearer, than they can be: one of them is something else. */
  readonly implausible: boolean;
  /** By name: why one of them was not measured in this frame, bridged or lost; those that were are not in it. Left out: all were, or nothing is known of it. */
  readonly unseen?: Readonly<Partial<Record<StickerName, UnseenReason>>>;
}
