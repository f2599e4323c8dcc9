import { DOSE_FIELDS, type Dose } from '../../dose/dose.ts';
import type { DayWords } from '../words/day-words.ts';

/** What changes from one dose to another, in words. */
export const changeWords = (from: Dose, to: Dose, { proposal }: Pick<DayWords, 'proposal'>): string =>
  DOSE_FIELDS.filter((field) => from[field] !== to[field])
    .map((field) => proposal.change[field](from[field], to[field]))
    .join(', ');
