import { languageOf } from '../words/languages.ts';
import { RECORD_CATALOGUES } from '../words/record-catalogues.ts';
import type { RecordWords } from '../words/record-words.ts';
import { useWords } from '../words/words-context.tsx';

/** The words of these screens in the language of the others. */
export const useRecordWords = (): RecordWords => RECORD_CATALOGUES[languageOf(null, [useWords().locale])];
