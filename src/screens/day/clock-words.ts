import type { CalendarDay } from '../../symptoms/calendar-day.ts';

/** A time of day as people say it. @param atMs ms since 1970 */
export const timeIn = (locale: string, atMs: number): string =>
  new Intl.DateTimeFormat(locale, { hour: 'numeric', minute: '2-digit' }).format(atMs);

/** A day as people say it: weekday, day and month. The day is the calendar's own, whatever the zone. */
export const dayIn = (locale: string, day: CalendarDay): string =>
  new Intl.DateTimeFormat(locale, { weekday: 'long', day: 'numeric', month: 'long', timeZone: 'UTC' }).format(
    Date.parse(`${day}T12:00:00.000Z`),
  );

/** The same for a narrow place: day and month. */
export const shortDayIn = (locale: string, day: CalendarDay): string =>
  new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'numeric', timeZone: 'UTC' }).format(
    Date.parse(`${day}T12:00:00.000Z`),
  );
