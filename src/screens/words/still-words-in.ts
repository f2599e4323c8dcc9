import { enStill } from './en-still.ts';
import { esStill } from './es-still.ts';
import { type Language, languageOf } from './languages.ts';
import type { StillWords } from './still-words.ts';
import { useWords } from './words-context.tsx';

const STILL: Readonly<Record<Language, StillWords>> = { en: enStill, es: esStill };

/** A part of the catalogue of `locale` that is loaded with the desk, which alone needs it. */
export const stillWordsIn = (locale: string): StillWords => STILL[languageOf(null, [locale])];

/** The same in the user's language. */
export const useStillWords = (): StillWords => stillWordsIn(useWords().locale);
