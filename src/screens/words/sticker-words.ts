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

/** What is said aloud while the hands are at the foot: short. */
export interface StickerVoiceWords {
  readonly signs: Record<
    (StickerRefusal | SkinRefusal)['kind'] | 'searching' | 'gone' | 'covered' | 'dark' | 'moves' | 'good',
    string
  >;
  /** The set begins by itself in a moment. */
  readonly begins: string;
}

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
  /** Of a video file: its own picture is shown. */
  readonly film: {
    readonly title: string;
    readonly lead: string;
    readonly found: string;
    readonly picture: (at: string, of: string) => string;
    readonly earlier: string;
    readonly later: string;
    readonly start: string;
    readonly other: string;
  };
  readonly voice: StickerVoiceWords;
  readonly handsFree: {
    readonly start: string;
    readonly about: string;
    readonly waits: string;
    readonly beginsIn: (seconds: number) => string;
    readonly cancel: string;
  };
  readonly start: string;
  readonly tapMyself: string;
  readonly findAgain: string;
  readonly onSkin: string;
  readonly tapAgain: string;
  readonly by: string;
  /** Of the big toe. */
  readonly side: string;
  readonly sideHint: string;
  readonly ways: Record<'pose' | 'stickers', { readonly name: string; readonly about: string }>;
}
