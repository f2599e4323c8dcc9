import { enGlide } from './en-glide.ts';
import { esGlide } from './es-glide.ts';
import type { GlideWords } from './glide-words.ts';
import type { Language } from './languages.ts';
import { useCatalogue } from './use-catalogue.ts';

/** A part of each catalogue that is loaded with the screens that look back on sets. */
export const GLIDE_CATALOGUES: Readonly<Record<Language, GlideWords>> = { en: enGlide, es: esGlide };

/** The one in the user's language. */
export const useGlideWords = (): GlideWords => useCatalogue(GLIDE_CATALOGUES);
