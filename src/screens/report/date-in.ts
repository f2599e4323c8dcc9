import type { CalendarDay } from '../../symptoms/calendar-day.ts';

/** A day with its year, as it stands on paper. The day is the calendar's own, whatever the zone. */
export const dateIn = (locale: string, day: CalendarDay): string =>
  new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' }).format(
    Date.parse(`${day}T12:00:00.000Z`),
  );
