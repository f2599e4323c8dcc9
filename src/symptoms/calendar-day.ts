/** A day on the wall calendar of the person, YYYY-MM-DD. The order of the texts is the order of the days. */
export type CalendarDay = string & { readonly calendarDay: true };

const DAY_MS = 86_400_000;
const FORM = /^\d{4}-\d{2}-\d{2}$/;

/** Midnight of the day in UTC, where every day has 24 hours: only for counting days, never a moment in somebody's day. */
const utcOf = (day: string): number => Date.parse(`${day}T00:00:00.000Z`);
const dayOfUtc = (utcMs: number): CalendarDay => new Date(utcMs).toISOString().slice(0, 10) as CalendarDay;

/** @returns null when the text is no day that exists, such as 2026-02-30 */
export function calendarDay(text: string): CalendarDay | null {
  const utcMs = FORM.test(text) ? utcOf(text) : Number.NaN;
  return Number.isNaN(utcMs) || dayOfUtc(utcMs) !== text ? null : dayOfUtc(utcMs);
}

/** Days from `from` to `to`, negative when `to` is earlier. Not touched by daylight saving: calendar days are counted, not hours. */
export const daysBetween = (from: CalendarDay, to: CalendarDay): number => Math.round((utcOf(to) - utcOf(from)) / DAY_MS);

export const addDays = (day: CalendarDay, days: number): CalendarDay => dayOfUtc(utcOf(day) + days * DAY_MS);

/** 0 Sunday to 6 Saturday. */
export const weekdayOf = (day: CalendarDay): number => new Date(utcOf(day)).getUTCDay();
