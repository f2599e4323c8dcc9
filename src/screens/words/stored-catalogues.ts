import { enStored } from './en-stored.ts';
import { esStored } from './es-stored.ts';
import { type Language, languageOf } from './languages.ts';
import type { StoredWords } from './stored-words.ts';
import { useWords } from './words-context.tsx';

/** The words of what is stored here in every language. */
export const STORED_CATALOGUES: Readonly<Record<Language, StoredWords>> = { en: enStored, es: esStored };

/** In the language of the other words. */
export const useStoredWords = (): StoredWords => STORED_CATALOGUES[languageOf(null, [useWords().locale])];
