import { addDays, type CalendarDay, weekdayOf } from '../symptoms/calendar-day.ts';
import { calendarText, escapedText, utcStamp } from './icalendar.ts';

/** One time of day to be reminded at, over some days. */
export interface Reminder {
  /** Does not change when the same reminder is written again, so that a calendar replaces it: `reminderUid`. */
  readonly uid: string;
  readonly fromDay: CalendarDay;
  /** How many days, counted from `fromDay`, at least 1. */
  readonly days: number;
  /** On which days of the first week, `fromDay` among them; the same weekdays come again each week. */
  readonly inWeek: readonly CalendarDay[];
  /** Minutes since midnight on the wall clock, 0 to 1439. */
  readonly minute: number;
  /** In the person's language: "Foot taps: 15 with the left foot". */
  readonly summary: string;
  readonly description: string;
}

/** Chosen: long enough to be seen in a day's view. */
const LASTS_MIN = 10;

/** A name that is nobody's address: the line of the prescription and which set of the day it is. */
export const reminderUid = (itemId: string, setOfDay: number): string => `${itemId}-${setOfDay}@evenside.invalid`;

/**
 * An iCalendar file (RFC 5545). Times are floating, without a zone: nine o'clock is nine on the wall wherever the telephone is, also after the change to summer
 * time, and no table of zones has to be carried. No address, no attendee, nothing that a calendar would send.
 * @param stampedAt when it was written, ISO 8601, UTC
 */
export function remindersFile(reminders: readonly Reminder[], stampedAt: string): string {
  return calendarText(
    'Reminders',
    reminders.map((reminder) => eventOf(reminder, stampedAt)),
  );
}

function eventOf({ uid, fromDay, days, inWeek, minute, summary, description }: Reminder, stampedAt: string): readonly string[] {
  const start = floating(fromDay, minute);
  const until = floating(addDays(fromDay, days - 1), minute);
  return [
    'BEGIN:VEVENT',
    `UID:${escapedText(uid)}`,
    `DTSTAMP:${utcStamp(stampedAt)}`,
    `DTSTART:${start}`,
    `DURATION:PT${LASTS_MIN}M`,
    // UNTIL is floating as DTSTART is: RFC 5545, 3.3.10.
    ...(days > 1 ? [`RRULE:FREQ=WEEKLY;UNTIL=${until};BYDAY=${inWeek.map(weekdayName).join(',')}`] : []),
    `SUMMARY:${escapedText(summary)}`,
    `DESCRIPTION:${escapedText(description)}`,
    'TRANSP:TRANSPARENT',
    'BEGIN:VALARM',
    'ACTION:DISPLAY',
    `DESCRIPTION:${escapedText(summary)}`,
    'TRIGGER:PT0S',
    'END:VALARM',
    'END:VEVENT',
  ];
}

const WEEKDAYS = ['SU', 'MO', 'TU', 'WE', 'TH', 'FR', 'SA'];
const weekdayName = (day: CalendarDay): string => String(WEEKDAYS[weekdayOf(day)]);

const two = (x: number): string => String(x).padStart(2, '0');

const floating = (day: CalendarDay, minute: number): string =>
  `${day.replaceAll('-', '')}T${two(Math.floor(minute / 60))}${two(minute % 60)}00`;
