import { enStored } from './en-stored.ts';
import { esStored } from './es-stored.ts';
import type { Language } from './languages.ts';
import type { StoredWords } from './stored-words.ts';
import { useCatalogue } from './use-catalogue.ts';

/** The words of what is stored here in every language. */
export const STORED_CATALOGUES: Readonly<Record<Language, StoredWords>> = { en: enStored, es: esStored };

/** In the language of the other words. */
export const useStoredWords = (): StoredWords => useCatalogue(STORED_CATALOGUES);
