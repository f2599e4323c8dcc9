/** Reminders are the same hour on the wall in every zone, also over the days on which clocks change, as a calendar reads them. */
import fc from 'fast-check';
import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import { dueInWeek } from '../../src/dose/due-days.ts';
import { localTime } from '../../src/dose/local-time.ts';
import { remindersFile } from '../../src/dose/reminders.ts';
import { reminderMinutes, WAKING_DAY } from '../../src/dose/spread.ts';
import { addDays, type CalendarDay, daysBetween } from '../../src/symptoms/calendar-day.ts';

const HOUR_MS = 3_600_000;

/** An hour and half of one, spring and autumn, either half of the earth; and how long the day of the change lasts from one hour on the wall to the same of the next. */
const CHANGES = [
  ['Europe/Berlin', '2026-03-29', 23],
  ['Europe/Berlin', '2026-10-25', 25],
  ['America/New_York', '2026-03-08', 23],
  ['America/New_York', '2026-11-01', 25],
  ['Australia/Lord_Howe', '2026-04-05', 24.5],
  ['Australia/Lord_Howe', '2026-10-04', 23.5],
] as const;

const wallOf = (timeZone: string) =>
  new Intl.DateTimeFormat('sv-SE', { timeZone, dateStyle: 'short', timeStyle: 'short', hourCycle: 'h23' });

/** The moments at which a clock on the wall shows this: a calendar's program rings at the first. */
function momentsOf(wall: string, timeZone: string): readonly number[] {
  const near = Date.parse(`${wall.replace(' ', 'T')}Z`);
  const clock = wallOf(timeZone);
  // All these zones are whole half hours away from universal time.
  return Array.from({ length: 57 }, (_, i) => near + (i - 28) * (HOUR_MS / 2)).filter((moment) => clock.format(moment) === wall);
}

/** When a calendar would remind, as the wall shows it: yyyy-mm-dd hh:mm. */
function occurrencesIn(file: string): readonly string[] {
  const [event] = new ICAL.Component(ICAL.parse(file)).getAllSubcomponents('vevent').map((each) => new ICAL.Event(each));
  const iterator = event?.iterator();
  const found: string[] = [];
  for (let next = iterator?.next(); next; next = iterator?.next()) {
    expect(next.zone).toBe(ICAL.Timezone.localTimezone);
    found.push(next.toString().replace('T', ' ').slice(0, 16));
  }
  return found;
}

const given = fc.record({
  change: fc.constantFrom(...CHANGES),
  before: fc.integer({ min: 0, max: 13 }),
  daysAWeek: fc.integer({ min: 1, max: 7 }),
  setsADay: fc.integer({ min: 1, max: 10 }),
  set: fc.nat(9),
});

test('over a change of the clocks each comes once on each of its days, at its hour on the wall', () => {
  fc.assert(
    fc.property(given, ({ change: [timeZone, day], before, daysAWeek, setsADay, set }) => {
      const fromDay = addDays(day as CalendarDay, -before);
      const minutes = reminderMinutes(setsADay, WAKING_DAY);
      const minute = minutes[set % minutes.length] ?? 0;
      const inWeek = dueInWeek(daysAWeek, fromDay);
      const file = remindersFile(
        [{ uid: 'line-1@evenside.invalid', fromDay, days: 14, inWeek, minute, summary: 'Foot taps', description: '' }],
        `${fromDay}T07:00:00.000Z`,
      );
      const hour = `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
      const days = [...inWeek, ...inWeek.map((each) => addDays(each, 7))].filter((each) => daysBetween(fromDay, each) < 14);
      const found = occurrencesIn(file);
      expect(found).toEqual(days.sort().map((each) => `${each} ${hour}`));
      for (const wall of found) {
        const moments = momentsOf(wall, timeZone);
        expect(moments).toHaveLength(1);
        expect(localTime({ nowMs: moments[0] ?? 0, timeZone }).day).toBe(wall.slice(0, 10));
      }
    }),
  );
});

test.each(CHANGES)(
  'in %s, the night to %s is as much shorter or longer for a daily reminder as the clocks say: %f hours',
  (timeZone, day, hours) => {
    const fromDay = addDays(day as CalendarDay, -1);
    const file = remindersFile(
      [
        {
          uid: 'line-1@evenside.invalid',
          fromDay,
          days: 3,
          inWeek: dueInWeek(7, fromDay),
          minute: 9 * 60,
          summary: 'Foot taps',
          description: '',
        },
      ],
      `${fromDay}T07:00:00.000Z`,
    );
    const [first = 0, second = 0, third = 0] = occurrencesIn(file).map((wall) => momentsOf(wall, timeZone)[0]);
    expect((second - first) / HOUR_MS).toBe(hours);
    expect((third - second) / HOUR_MS).toBe(24);
  },
);
