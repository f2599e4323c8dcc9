import type { KeptWords } from './kept-words.ts';

/** Where sets are kept, in English. */
export const enKept: KeptWords = {
  visitOnly: 'This browser window keeps nothing: all is gone when you close it.',
  visitSave: 'Save as a file first',
  storeNow: 'Store it now',
  saveFile: 'Save it as a file',
  fileName: 'evenside-set',
};
