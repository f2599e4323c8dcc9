import type { DayDone } from '../../dose/progress.ts';

/** How much of what was due on a day, or in a week, was done. `rest`: nothing was due, and nothing done. */
export const FULLNESS = ['all', 'part', 'none', 'rest'] as const;
export type Fullness = (typeof FULLNESS)[number];

export function fullnessOf({ setsDone, setsDue }: Pick<DayDone, 'setsDone' | 'setsDue'>): Fullness {
  if (setsDue === 0) return setsDone > 0 ? 'all' : 'rest';
  if (setsDone === 0) return 'none';
  return setsDone >= setsDue ? 'all' : 'part';
}
