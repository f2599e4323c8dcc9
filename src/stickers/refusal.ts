/** Why something is not taken for a sticker, or three for the stickers of a foot: what was found and what was needed. */
export type StickerRefusal =
  /** Its colour is not distinct from what lies beside it, or runs on beyond it, or much else in the picture has it (`share` of the picture). */
  | { readonly kind: 'like-surround'; readonly contrast: number; readonly neededContrast: number; readonly share: number }
  /** Too few pixels for a place to a fraction of one. */
  | { readonly kind: 'too-small'; readonly diameterPx: number; readonly neededPx: number }
  /** A white highlight over much of it. */
  | { readonly kind: 'glare'; readonly share: number; readonly most: number }
  /** A patch of colour, but no round one. */
  | { readonly kind: 'not-round'; readonly roundness: number; readonly needed: number }
  /** More than three of one colour, and nothing tells which three are meant. */
  | { readonly kind: 'room-same-colour'; readonly count: number }
  /** Fewer than three that lie as on a foot. */
  | { readonly kind: 'too-few'; readonly count: number; readonly needed: number };
