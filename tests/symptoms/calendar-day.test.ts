import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays, type CalendarDay, calendarDay, daysBetween } from '../../src/symptoms/calendar-day.ts';

test.each(['2026-02-30', '2026-13-01', '26-01-01', '2026-1-1', '', '2026-01-01T00:00'])('%j is no day', (text) => {
  expect(calendarDay(text)).toBeNull();
});

test('a leap day is a day', () => {
  expect(calendarDay('2028-02-29')).toBe('2028-02-29');
});

test('days are counted across the changes to and from summer time as across any other', () => {
  // The last Sundays of March and October in most of Europe.
  expect(daysBetween('2026-03-28' as CalendarDay, '2026-03-30' as CalendarDay)).toBe(2);
  expect(daysBetween('2026-10-24' as CalendarDay, '2026-10-26' as CalendarDay)).toBe(2);
  expect(addDays('2026-12-31' as CalendarDay, 1)).toBe('2027-01-01');
});

test('adding days and counting them agree, and later days are larger texts', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 40_000 }), fc.integer({ min: -400, max: 400 }), (start, days) => {
      const from = addDays('1990-01-01' as CalendarDay, start);
      const to = addDays(from, days);
      expect(daysBetween(from, to)).toBe(days);
      expect(Math.sign(days)).toBe(to > from ? 1 : to < from ? -1 : 0);
    }),
  );
});
