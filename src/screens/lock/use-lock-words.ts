import { languageOf } from '../words/languages.ts';
import { LOCK_CATALOGUES } from '../words/lock-catalogues.ts';
import type { LockScreenWords } from '../words/lock-words.ts';
import { useWords } from '../words/words-context.tsx';

/** The words of the lock's screens in the language of the others. */
export const useLockWords = (): LockScreenWords => LOCK_CATALOGUES[languageOf(null, [useWords().locale])];
