/** Summer time, travel, and clocks that are set back or forward: what is due, what is done and what is stopped stay right. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { localTime } from '../../src/dose/local-time.ts';
import { today } from '../../src/dose/today.ts';
import { addDays, type CalendarDay, daysBetween, weekdayOf } from '../../src/symptoms/calendar-day.ts';
import { gateNow } from '../../src/symptoms/gate-now.ts';
import { clearance, redFlags } from '../symptoms/told.ts';
import { done, doseLog, line, prescription } from './plan.ts';

/** Half hours, whole days ahead, summer time by an hour and by half of one, at midnight, on either half of the earth. */
const ZONES = [
  'Europe/Madrid',
  'America/New_York',
  'Australia/Lord_Howe',
  'Asia/Kathmandu',
  'Pacific/Kiritimati',
  'Pacific/Niue',
  'Africa/Cairo',
  'America/Santiago',
  'UTC',
] as const;
const HOUR = 3_600_000;
const anyZone = fc.constantFrom(...ZONES);
const anyMoment = fc.integer({ min: Date.UTC(2026, 0, 1), max: Date.UTC(2027, 0, 1) });

describe('days of 23, 24 and 25 hours', () => {
  test('follow one another without a hole, half an hour after half an hour, in every zone', () => {
    fc.assert(
      fc.property(anyZone, anyMoment, (timeZone, from) => {
        let last = localTime({ nowMs: from, timeZone }).day;
        for (let nowMs = from; nowMs < from + 26 * HOUR; nowMs += HOUR / 2) {
          const { day } = localTime({ nowMs, timeZone });
          expect([0, 1]).toContain(daysBetween(last, day));
          last = day;
        }
      }),
      { numRuns: 30 },
    );
  });

  test.each([
    ['Europe/Madrid', '2026-03-29', 23],
    ['Europe/Madrid', '2026-10-25', 25],
    ['Europe/Madrid', '2026-05-04', 24],
    ['Australia/Lord_Howe', '2026-04-05', 24.5],
    ['America/Santiago', '2026-09-06', 23],
  ] as const)('of %s, %s lasts %f hours', (timeZone, day, hours) => {
    const around = Date.parse(`${day}T00:00:00Z`) - 30 * HOUR;
    const steps = Array.from({ length: 4 * 24 * 2 }, (_, i) => around + (i * HOUR) / 2);
    expect(steps.filter((nowMs) => localTime({ nowMs, timeZone }).day === day).length / 2).toBe(hours);
  });

  test('the next day is the next on the calendar, and a week later is the same weekday', () => {
    fc.assert(
      fc.property(anyZone, anyMoment, (timeZone, nowMs) => {
        const { day } = localTime({ nowMs, timeZone });
        expect(daysBetween(day, addDays(day, 1))).toBe(1);
        expect(weekdayOf(addDays(day, 7))).toBe(weekdayOf(day));
        // Whatever a day lasts, between a day and the moment 24 hours later there is at most one day more or less than one.
        expect([0, 1, 2]).toContain(daysBetween(day, localTime({ nowMs: nowMs + 24 * HOUR, timeZone }).day));
      }),
    );
  });
});

const item = line('foot-tap', { daysAWeek: 7 });
const plan = { ...prescription(item), at: '2025-12-01T00:00:00.000Z', day: '2025-12-01' as CalendarDay };

/** A set that ended at this moment, on the day that the wall showed there. */
const setAt = (nowMs: number, timeZone: string) =>
  done(item, 1, 0, { day: localTime({ nowMs, timeZone }).day, endedAt: new Date(nowMs).toISOString() });
const lineNow = (sets: readonly ReturnType<typeof setAt>[], nowMs: number, timeZone: string) =>
  today(doseLog({ prescriptions: [plan], done: sets }), { nowMs, timeZone })?.lines[0];

describe('what is due and done', () => {
  test('a set counts for the day on which it was done, wherever and whenever it is looked at later', () => {
    fc.assert(
      fc.property(anyZone, anyZone, anyMoment, fc.integer({ min: 0, max: 30 * 24 }), (there, here, doneMs, hours) => {
        const nowMs = doneMs + hours * HOUR;
        const set = setAt(doneMs, there);
        const { day } = localTime({ nowMs, timeZone: here });
        expect(lineNow([set], nowMs, here)?.done.length).toBe(set.day === day ? 1 : 0);
      }),
    );
  });

  test('a clock that is set back within the day makes no done set undone', () => {
    fc.assert(
      fc.property(anyZone, anyMoment, fc.integer({ min: 1, max: 12 * 60 }), (timeZone, doneMs, minutes) => {
        const nowMs = doneMs - minutes * 60_000;
        const set = setAt(doneMs, timeZone);
        fc.pre(localTime({ nowMs, timeZone }).day === set.day);
        expect(lineNow([set], nowMs, timeZone)?.done).toEqual([set]);
      }),
    );
  });

  test('in the night when clocks change, the check-in is about the day before, once', () => {
    for (const [timeZone, evening] of [
      ['Europe/Madrid', '2026-03-28T20:00:00Z'],
      ['Europe/Madrid', '2026-10-24T19:00:00Z'],
      ['America/New_York', '2026-11-01T00:30:00Z'],
    ] as const) {
      const set = setAt(Date.parse(evening), timeZone);
      const log = doseLog({ prescriptions: [plan], done: [set] });
      for (let hours = 0; hours < 48; hours += 1) {
        const nowMs = Date.parse(evening) + hours * HOUR;
        const now = today(log, { nowMs, timeZone });
        expect(now?.checkInAbout).toBe(now?.day === set.day ? null : set.day);
      }
    }
  });
});

describe('the rest before the next set', () => {
  const together = line('foot-tap', {
    daysAWeek: 7,
    spread: 'together',
    restS: 90,
    start: { setsADay: 3, repsASet: 10, holdS: 0 },
  });
  const restMs = 90_000;
  const noon = Date.parse('2026-03-11T12:00:00Z');
  const once = done(together, 1, 0, { day: '2026-03-11' as CalendarDay, endedAt: new Date(noon).toISOString() });
  const log = doseLog({ prescriptions: [{ ...plan, ...prescription(together), at: plan.at, day: plan.day }], done: [once] });
  const restAt = (nowMs: number, countedMs = 0) => today(log, { nowMs, timeZone: 'UTC' }, () => countedMs)?.lines[0];

  test('is never longer than what was prescribed, however far the clock is set back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 11 * 60 * 60 }), (backS) => {
        const nowMs = noon - backS * 1000;
        expect(restAt(nowMs)).toMatchObject({ state: 'later', mayStartMs: nowMs + restMs });
      }),
    );
  });

  test('goes on where it was when the clock is set back in it, as far as it was counted', () => {
    const nowMs = noon - HOUR;
    expect(restAt(nowMs, 40_000)).toMatchObject({ state: 'later', mayStartMs: nowMs + 50_000 });
    expect(restAt(nowMs, restMs - 0.3)).toMatchObject({ state: 'now' });
    expect(restAt(nowMs, restMs)).toMatchObject({ state: 'now' });
  });

  test('is over when the wall clock says so, where the count stood still in a sleep of the machine', () => {
    expect(restAt(noon + restMs, 10_000)).toMatchObject({ state: 'now' });
  });
});

describe('a stop', () => {
  const yes = redFlags(10, 12, { 'saddle-numbness': 'yes' });

  test('holds when the clock is set back by up to a week, and in any zone', () => {
    for (let back = 0; back <= 7; back += 1) {
      expect(gateNow(doseLog({ redFlags: [yes] }), addDays(yes.day, -back)).kind).toBe('stopped');
    }
    const nowMs = Date.parse(yes.at) - 26 * HOUR;
    for (const timeZone of ZONES) {
      const now = today(doseLog({ prescriptions: [plan], redFlags: [yes] }), { nowMs, timeZone });
      expect(now?.gate.kind).toBe('stopped');
    }
  });

  test('is not taken away by a no that a wrong clock put on a later day', () => {
    const ahead = redFlags(14, 12);
    expect(gateNow(doseLog({ redFlags: [yes, ahead] }), yes.day).kind).toBe('stopped');
  });

  test('is lifted by a clearance after it', () => {
    expect(gateNow(doseLog({ redFlags: [yes], clearances: [clearance(11, 9)] }), addDays(yes.day, 1)).kind).toBe('may');
  });
});
