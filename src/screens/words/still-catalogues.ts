import { enStill } from './en-still.ts';
import { esStill } from './es-still.ts';
import { type Language, languageOf } from './languages.ts';
import type { StillWords } from './still-words.ts';
import { useWords } from './words-context.tsx';

/** A part of each catalogue that is loaded with the desk, which alone needs it. */
export const STILL_CATALOGUES: Readonly<Record<Language, StillWords>> = { en: enStill, es: esStill };

/** The one that goes with a catalogue's locale. */
export const stillWordsIn = (locale: string): StillWords => STILL_CATALOGUES[languageOf(null, [locale])];

/** The same in the user's language. */
export const useStillWords = (): StillWords => stillWordsIn(useWords().locale);
