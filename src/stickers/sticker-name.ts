/** Where a sticker sits. The first three make the great toe's angle; the others are followed beside them when they are there. */
export type StickerName = 'tip' | 'knuckle' | 'arch' | 'toe-2' | 'toe-3' | 'toe-4' | 'toe-5' | 'shin' | 'ankle' | 'forefoot';

/** From the tip of the toe along the foot. */
export const TOE_STICKERS = ['tip', 'knuckle', 'arch'] as const satisfies readonly StickerName[];
export type ToeSticker = (typeof TOE_STICKERS)[number];
