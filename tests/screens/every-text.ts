import { en } from '../../src/screens/words/en.ts';
import { es } from '../../src/screens/words/es.ts';
import { FHIR_CATALOGUES } from '../../src/screens/words/fhir-catalogues.ts';
import { GLIDE_CATALOGUES } from '../../src/screens/words/glide-catalogues.ts';
import { GLIDE_SET_CATALOGUES } from '../../src/screens/words/glide-set-catalogues.ts';
import type { Language } from '../../src/screens/words/languages.ts';
import { LOCK_CATALOGUES } from '../../src/screens/words/lock-catalogues.ts';
import { RECORD_CATALOGUES } from '../../src/screens/words/record-catalogues.ts';
import { SEEN_BY_CATALOGUES } from '../../src/screens/words/seen-by-catalogues.ts';
import { SERVER_CATALOGUES } from '../../src/screens/words/server-catalogues.ts';
import { STICKER_CATALOGUES } from '../../src/screens/words/sticker-catalogues.ts';
import { STILL_CATALOGUES } from '../../src/screens/words/still-catalogues.ts';
import { STORED_CATALOGUES } from '../../src/screens/words/stored-catalogues.ts';

/** Arguments that fit every function of a catalogue: numbers and texts both print. */
const ARGUMENTS = [2, 3, '4'] as const;

/** Every text of a catalogue with its place. */
export function textsOf(
  words: unknown,
  place: string,
  given: readonly unknown[] = ARGUMENTS,
): readonly (readonly [string, string])[] {
  if (typeof words === 'string') return [[place, words]];
  if (typeof words === 'function') return textsOf(words(...given), `${place}()`, given);
  if (typeof words !== 'object' || words === null) throw new Error(`a catalogue requires texts, got ${typeof words} at ${place}`);
  return Object.entries(words).flatMap(([key, inner]) => textsOf(inner, `${place}.${key}`, given));
}

const CATALOGUES = { en, es };

/** All words of a language, those that are loaded later too. */
export const wholeOf = (language: Language) => ({
  ...CATALOGUES[language],
  lockScreens: LOCK_CATALOGUES[language],
  record: RECORD_CATALOGUES[language],
  still: STILL_CATALOGUES[language],
  fhir: FHIR_CATALOGUES[language],
  stored: STORED_CATALOGUES[language],
  glide: GLIDE_CATALOGUES[language],
  glideSet: GLIDE_SET_CATALOGUES[language],
  seenBy: SEEN_BY_CATALOGUES[language],
  server: SERVER_CATALOGUES[language],
  stickers: STICKER_CATALOGUES[language],
});
