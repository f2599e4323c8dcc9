import { enStickers } from './en-stickers.ts';
import { esStickers } from './es-stickers.ts';
import type { Language } from './languages.ts';
import type { StickerWords } from './sticker-words.ts';
import { useCatalogue } from './use-catalogue.ts';

/** A part of each catalogue that is loaded with the screens before a set. */
export const STICKER_CATALOGUES: Readonly<Record<Language, StickerWords>> = { en: enStickers, es: esStickers };

/** The one in the user's language. */
export const useStickerWords = (): StickerWords => useCatalogue(STICKER_CATALOGUES);
