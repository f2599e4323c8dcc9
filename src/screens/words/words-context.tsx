import { createContext, useContext } from 'react';
import { en } from './en.ts';
import type { Words } from './words.ts';

export const WordsContext = createContext<Words>(en);
/** The words in the user's language. */
export const useWords = (): Words => useContext(WordsContext);
