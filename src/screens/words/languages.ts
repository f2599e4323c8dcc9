import { en } from './en.ts';
import type { Words } from './words.ts';

/** Every language there is, each under its own name. */
export const LANGUAGES = ['en', 'es'] as const;
export type Language = (typeof LANGUAGES)[number];

/** English is always here; another language comes when it is spoken. */
const LOADERS: Readonly<Record<Language, () => Promise<Words>>> = {
  en: async () => en,
  es: async () => (await import('./es.ts')).es,
};

/** @throws what the browser throws when a part of the site can't be loaded */
export const loadWords = (language: Language): Promise<Words> => LOADERS[language]();

/** What each language calls itself: understood by those who need it, whatever the page speaks now. */
export const OWN_NAMES: Readonly<Record<Language, string>> = { en: 'English', es: 'Español' };

/**
 * The language to speak: the chosen one, else the first of the browser's that there is, else English.
 * @param preferred BCP 47 tags, most wanted first
 */
export function languageOf(chosen: Language | null, preferred: readonly string[]): Language {
  const known = preferred.map((tag) => tag.toLowerCase().split('-')[0]);
  return chosen ?? known.flatMap((tag) => LANGUAGES.filter((language) => language === tag))[0] ?? 'en';
}
