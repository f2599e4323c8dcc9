import { type Language, languageOf } from './languages.ts';
import { useWords } from './words-context.tsx';

/** The part of a catalogue in the language of the other words. For parts that are loaded with the screens that need them. */
export const useCatalogue = <W>(catalogues: Readonly<Record<Language, W>>): W =>
  catalogues[languageOf(null, [useWords().locale])];
