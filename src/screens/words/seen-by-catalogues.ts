import { enSeenBy } from './en-seen-by.ts';
import { esSeenBy } from './es-seen-by.ts';
import type { Language } from './languages.ts';
import type { SeenByWords } from './seen-by-words.ts';
import { useCatalogue } from './use-catalogue.ts';

/** A part of each catalogue that is loaded with the screens that tell the two ways apart. */
export const SEEN_BY_CATALOGUES: Readonly<Record<Language, SeenByWords>> = { en: enSeenBy, es: esSeenBy };

/** The one in the user's language. */
export const useSeenByWords = (): SeenByWords => useCatalogue(SEEN_BY_CATALOGUES);
