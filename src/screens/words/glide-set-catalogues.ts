import { enGlideSet } from './en-glide-set.ts';
import { esGlideSet } from './es-glide-set.ts';
import type { GlideSetWords } from './glide-set-words.ts';
import type { Language } from './languages.ts';
import { useCatalogue } from './use-catalogue.ts';

/** A part of each catalogue that is loaded with the screens of a set, not with the first one. */
export const GLIDE_SET_CATALOGUES: Readonly<Record<Language, GlideSetWords>> = { en: enGlideSet, es: esGlideSet };

/** The one in the user's language. */
export const useGlideSetWords = (): GlideSetWords => useCatalogue(GLIDE_SET_CATALOGUES);
