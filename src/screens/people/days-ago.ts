import { type CalendarDay, daysBetween } from '../../symptoms/calendar-day.ts';

/** How long ago a day was, as people say it: "today", "yesterday", "12 days ago". */
export const daysAgoIn = (locale: string, day: CalendarDay, today: CalendarDay): string =>
  new Intl.RelativeTimeFormat(locale, { numeric: 'auto' }).format(-daysBetween(day, today), 'day');
