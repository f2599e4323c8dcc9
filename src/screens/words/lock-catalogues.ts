import { enLock } from './en-lock.ts';
import { esLock } from './es-lock.ts';
import type { Language } from './languages.ts';
import type { LockScreenWords } from './lock-words.ts';

/** The words of the lock's screens in every language. */
export const LOCK_CATALOGUES: Readonly<Record<Language, LockScreenWords>> = { en: enLock, es: esLock };
