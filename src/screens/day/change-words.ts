import type { Dose, DoseField } from '../../dose/dose.ts';
import type { DayWords } from '../words/day-words.ts';

const FIELDS: readonly DoseField[] = ['setsADay', 'repsASet', 'holdS'];

/** What changes from one dose to another, in words. */
export const changeWords = (from: Dose, to: Dose, { proposal }: Pick<DayWords, 'proposal'>): string =>
  FIELDS.filter((field) => from[field] !== to[field])
    .map((field) => proposal.change[field](from[field], to[field]))
    .join(', ');
