import { addDays, type CalendarDay, daysBetween } from '../symptoms/calendar-day.ts';

const WEEK = 7;

/**
 * The next day, from `day` on, on which a line is due. In any seven days no more than `daysAWeek`, with as many days between as that allows evenly
 * (three a week: every other day). A day on which something was done already stays due.
 * @param doneDays days on which it was done, in any order
 */
export function nextDueDay(daysAWeek: number, doneDays: readonly CalendarDay[], day: CalendarDay): CalendarDay {
  if (!(daysAWeek >= 1)) throw new Error(`nextDueDay requires at least one day a week, got ${daysAWeek}`);
  const earlier = [...new Set(doneDays)].filter((done) => done < day).toSorted();
  if (daysAWeek >= WEEK || doneDays.includes(day)) return day;
  for (let due = day; ; due = addDays(due, 1)) {
    const last = earlier.at(-1);
    const farEnough = last === undefined || daysBetween(last, due) >= Math.floor(WEEK / daysAWeek);
    const inWeek = earlier.filter((done) => daysBetween(done, due) < WEEK).length;
    if (farEnough && inWeek < daysAWeek) return due;
  }
}

/** The days of a week that begins on `day` on which a line is due when every due day is done. The same weekdays come again each week. */
export function dueInWeek(daysAWeek: number, day: CalendarDay): readonly CalendarDay[] {
  const due: CalendarDay[] = [];
  for (let i = 0; i < WEEK; i += 1) {
    const next = addDays(day, i);
    if (nextDueDay(daysAWeek, due, next) === next) due.push(next);
  }
  return due;
}
