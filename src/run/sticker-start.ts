import type { JointAngle } from '../angles/joint-angle.ts';
import type { Sticker } from '../stickers/sticker-at.ts';
import type { StickerName } from '../stickers/sticker-name.ts';

/** Stickers by where they sit; places and sizes in px of the upright picture. */
export type NamedStickers = Readonly<Partial<Record<StickerName, Sticker>>>;

/** How the stickers of a set are come by. */
export type StickerStart =
  /** Looked for in its first pictures. `colour`: as `#rrggbb`; null: any. */
  | { readonly kind: 'find'; readonly colour: string | null }
  /** Found, or tapped, before the set. */
  | { readonly kind: 'stickers'; readonly named: NamedStickers }
  /** No stickers: the points on bare skin that `StickerClient.tapSkin` was told last. */
  | { readonly kind: 'skin' };

/** Whose stickers are looked for. */
export interface StickerTask {
  /** Which joint's stickers: the toe's or the ankle's. */
  readonly angle: JointAngle;
  readonly start: StickerStart;
}
