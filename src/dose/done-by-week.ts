import { type CalendarDay, daysBetween } from '../symptoms/calendar-day.ts';
import type { DayDone } from './progress.ts';

const WEEK = 7;

/**
 * The same days by weeks that begin with the first of them, for a stretch too long to show each day. `day` is a week's first day.
 * @param days in a row, oldest first
 */
export function doneByWeek(days: readonly DayDone[]): readonly DayDone[] {
  const weeks = new Map<number, { day: CalendarDay; setsDue: number; setsDone: number; reps: number }>();
  const first = days[0]?.day;
  for (const { day, setsDue, setsDone, reps } of days) {
    const number = first === undefined ? 0 : Math.floor(daysBetween(first, day) / WEEK);
    const week = weeks.get(number) ?? { day, setsDue: 0, setsDone: 0, reps: 0 };
    // A busy day does not make up for a missed one.
    const counted = Math.min(setsDone, setsDue);
    weeks.set(number, {
      ...week,
      setsDue: week.setsDue + setsDue,
      setsDone: week.setsDone + counted,
      reps: week.reps + reps,
    });
  }
  return [...weeks.values()];
}
