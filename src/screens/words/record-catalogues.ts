import { enRecord } from './en-record.ts';
import { esRecord } from './es-record.ts';
import type { Language } from './languages.ts';
import type { RecordWords } from './record-words.ts';

/** The words of the screens on which a record is sent and taken in, in every language. */
export const RECORD_CATALOGUES: Readonly<Record<Language, RecordWords>> = { en: enRecord, es: esRecord };
