import type { StickerRefusal } from '../../stickers/refusal.ts';
import type { SkinRefusal } from '../../stickers/skin-points.ts';
import type { StickerName } from '../../stickers/sticker-name.ts';

/** Joints that stickers can tell. */
export type StickerJoint = 'toe' | 'ankle';

/** What must be right before a set by stickers, in the order it is shown. */
export const STICKER_CHECKS = ['seen', 'large', 'light', 'glare', 'still'] as const;
export type StickerCheck = (typeof STICKER_CHECKS)[number];

/** How a check stands: not known before the stickers are seen. */
export type CheckState = 'good' | 'bad' | 'unknown';

/** Texts of setting up a set by stickers. */
export interface StickerWords {
  readonly title: string;
  readonly lead: Record<StickerJoint, string>;
  readonly names: Partial<Record<StickerName, string>>;
  readonly places: Record<StickerJoint, readonly string[]>;
  readonly placesTitle: string;
  readonly drawing: Record<StickerJoint, string>;
  readonly distance: Record<StickerJoint, string>;
  readonly camera: Record<StickerJoint, string>;
  readonly cameraShort: Record<StickerJoint, string>;
  readonly whatStickers: string;
  readonly noStickers: string;
  readonly picture: string;
  /** The picture, when it takes taps. */
  readonly tapPicture: (name: string) => string;
  readonly searching: string;
  readonly found: string;
  readonly tapNext: (name: string, n: number) => string;
  readonly skinNext: (name: string, n: number) => string;
  readonly tapped: string;
  readonly tapKeys: string;
  readonly checks: Record<StickerCheck, Record<CheckState, string>>;
  readonly refusals: Record<(StickerRefusal | SkinRefusal)['kind'], string>;
  readonly start: string;
  readonly tapMyself: string;
  readonly findAgain: string;
  readonly onSkin: string;
  readonly tapAgain: string;
  readonly by: string;
  readonly sideHint: string;
  readonly ways: Record<'pose' | 'stickers', { readonly name: string; readonly about: string }>;
}
