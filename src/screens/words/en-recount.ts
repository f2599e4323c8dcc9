import { plural } from './en-plural.ts';
import type { RecountWords } from './recount-words.ts';

const one = (n: number): boolean => plural.select(n) === 'one';
const were = (n: number): string => (one(n) ? `${n} was` : `${n} were`);

/** Why the count changed after the set, in English. */
export const enRecount: RecountWords = {
  title: (shown, now) => `${shown} counted while you moved, ${now} in the end`,
  small: (n) => `${were(n)} less than about half as far as you usually went, so kept apart as too small.`,
  gap: (n) => `In ${n} the leg was lost for a moment, so ${one(n) ? 'it does' : 'they do'} not count.`,
  unfinished: (n) => `${were(n)} not over when the set ended.`,
  unsure: (n) => `${were(n)} not sure any more when the whole set was measured.`,
  more: (n) => `${were(n)} found only when the whole set was measured, and ${one(n) ? 'counts' : 'count'} now.`,
};
