import { create } from 'zustand';
import { en } from './en.ts';
import { type Language, loadWords } from './languages.ts';
import type { Words } from './words.ts';

/** The words that the page speaks now. */
export const useSpoken = create<{ readonly words: Words }>(() => ({ words: en }));

let wanted: Language = 'en';

/** Speaks a language once its words are there. Where they can't be loaded the page goes on in the one it speaks. */
export async function speak(language: Language): Promise<void> {
  wanted = language;
  const words = await loadWords(language).catch(() => null);
  if (words && wanted === language) useSpoken.setState({ words });
}
