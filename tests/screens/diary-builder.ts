import { entryNow } from '../../src/screens/day/entry-now.ts';
import { addDays } from '../../src/symptoms/calendar-day.ts';

/** The red-flag questions, all answered no. */
export const ALL_NO = {
  'saddle-numbness': 'no',
  'bladder-bowel': 'no',
  'sexual-sensation': 'no',
  'both-legs-weak': 'no',
  'foot-drop-worse': 'no',
  'fever-or-fall': 'no',
} as const;

/** What an entry begins with that was made some days ago. */
export function daysAgo(days: number) {
  const entry = entryNow();
  return { ...entry, at: new Date(Date.parse(entry.at) - days * 86_400_000).toISOString(), day: addDays(entry.day, -days) };
}
