import { enGlideSet } from './en-glide-set.ts';
import { esGlideSet } from './es-glide-set.ts';
import type { GlideSetWords } from './glide-set-words.ts';
import { type Language, languageOf } from './languages.ts';
import { useWords } from './words-context.tsx';

/** A part of each catalogue that is loaded with the screens of a set, not with the first one. */
export const GLIDE_SET_CATALOGUES: Readonly<Record<Language, GlideSetWords>> = { en: enGlideSet, es: esGlideSet };

/** The one in the user's language. */
export const useGlideSetWords = (): GlideSetWords => GLIDE_SET_CATALOGUES[languageOf(null, [useWords().locale])];
