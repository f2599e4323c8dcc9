import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DoseLog } from '../../src/dose/dose-log.ts';
import { dueInWeek, nextDueDay } from '../../src/dose/due-days.ts';
import { today } from '../../src/dose/today.ts';
import { isShown, mayDoMore } from '../../src/dose/today-line.ts';
import { addDays } from '../../src/symptoms/calendar-day.ts';
import { aGlide } from '../record/glide-builders.ts';
import { checkIn, clearance, dayOf, momentOf, redFlags, report } from '../symptoms/told.ts';
import { done, doseLog, line, prescription, step } from './plan.ts';

const tap = line('foot-tap');
const plan = prescription(tap);
const at = (n: number, hour: number) => ({ nowMs: Date.parse(momentOf(n, hour)), timeZone: 'UTC' });
const seen = (log: Partial<DoseLog>, n: number, hour: number, by = plan) => {
  const found = today(doseLog({ prescriptions: [by], ...log }), at(n, hour));
  if (!found) throw new Error('expected a prescription');
  return found;
};
const stateOf = (log: Partial<DoseLog>, n: number, hour: number, by = plan) => {
  const { lines, next } = seen(log, n, hour, by);
  return { state: lines[0]?.state, mayStartMs: lines[0]?.mayStartMs, next: next?.item.id ?? null };
};

test('without a prescription there is no today', () => {
  expect(today(doseLog(), at(4, 9))).toBeNull();
  expect(today(doseLog({ prescriptions: [plan] }), { nowMs: Date.parse(plan.at) - 1, timeZone: 'UTC' })).toBeNull();
});

describe('a line', () => {
  test('is due for each leg', () => {
    const both = prescription(line('foot-tap', { sides: ['left', 'right'] }));
    const { lines } = seen({ done: [done(tap, 4, 8)] }, 4, 9, both);
    expect(lines.map(({ side, setsDue, done: sets, state }) => [side, setsDue, sets.length, state])).toEqual([
      ['left', 3, 1, 'later'],
      ['right', 3, 0, 'now'],
    ]);
  });

  test('may start at once when nothing was done', () => {
    expect(stateOf({}, 4, 9)).toEqual({ state: 'now', mayStartMs: at(4, 9).nowMs, next: tap.id });
  });

  test('waits half of the even distance after a set: 130 minutes for three sets in 13 hours', () => {
    const log = { done: [done(tap, 4, 9)] };
    const freeMs = at(4, 9).nowMs + 130 * 60_000;
    expect(stateOf(log, 4, 10)).toEqual({ state: 'later', mayStartMs: freeMs, next: tap.id });
    expect(stateOf(log, 4, 9 + 130 / 60).state).toBe('now');
  });

  test('done together it waits only for the rest', () => {
    const stand = line('heel-stand', { start: { setsADay: 2, repsASet: 5, holdS: 5 } });
    const log = { done: [done(stand, 4, 9)] };
    expect(stateOf(log, 4, 9, prescription(stand))).toMatchObject({ state: 'later', mayStartMs: at(4, 9).nowMs + 60_000 });
  });

  test('whose next set would come after the waking day is over for today', () => {
    expect(stateOf({ done: [done(tap, 4, 20)] }, 4, 20.5)).toMatchObject({ state: 'day-over', next: null });
  });

  test('is done when all sets are, also by hand and without saying for which line', () => {
    const sets = [9, 12, 15].map((hour) => done(tap, 4, hour, { itemId: null }));
    expect(stateOf({ done: sets }, 4, 16)).toEqual({ state: 'done', mayStartMs: null, next: null });
  });

  test('does not count sets of another leg, line, day, or without a repetition', () => {
    const sets = [
      done(tap, 4, 8, { side: 'right' }),
      done(tap, 4, 8, { itemId: 'another' }),
      done(tap, 3, 8),
      done(tap, 4, 8, { reps: 0 }),
    ];
    expect(seen({ done: sets }, 4, 11).lines[0]?.done).toEqual([]);
  });

  test('follows the dose that was agreed to, within the limits, and starts anew with a new prescription', () => {
    const to = { setsADay: 9, repsASet: 20, holdS: 0 };
    const steps = [step(plan, tap, 3, { to })];
    expect(seen({ steps }, 4, 9).lines[0]?.dose).toEqual({ setsADay: 3, repsASet: 20, holdS: 0 });
    expect(seen({ steps }, 2, 9).lines[0]?.dose).toEqual(tap.start);
    const revised = { ...prescription(tap), id: 'revised', at: momentOf(3, 12) };
    expect(seen({ steps, prescriptions: [plan, revised] }, 4, 9).lines[0]?.dose).toEqual(tap.start);
  });

  test('rests on the days between', () => {
    const thrice = prescription(line('heel-stand'));
    expect(seen({ done: [done(line('heel-stand'), 3, 9)] }, 4, 9, thrice).lines[0]).toMatchObject({
      state: 'rest-day',
      setsDue: 0,
      nextDay: dayOf(5),
    });
  });

  test('is not offered when symptoms were last told above the limit today', () => {
    const strong = report(4, 8, { intensity: 6 });
    expect(stateOf({ reports: [strong] }, 4, 9).state).toBe('too-strong');
    expect(stateOf({ reports: [strong] }, 5, 9).state).toBe('now');
    expect(stateOf({ reports: [strong, report(4, 9, { intensity: 5 })] }, 4, 10).state).toBe('now');
    expect(stateOf({ reports: [strong, report(4, 9, { intensity: 'not-answered' })] }, 4, 10).state).toBe('too-strong');
  });

  test('of nerve glides is done after the one set of the first day, and no other one is shown', () => {
    const glide = line('nerve-glide');
    const { lines, next } = seen({ done: [done(glide, 4, 9)] }, 4, 20, prescription(glide));
    expect(lines[0]).toMatchObject({ state: 'done', setsDue: 1 });
    expect(next).toBeNull();
    expect(lines.map((each) => [mayDoMore(each), isShown(each)])).toEqual([[false, false]]);
    const tapped = seen({ done: [9, 12, 15].map((hour) => done(tap, 4, hour)) }, 4, 20).lines;
    expect(tapped.map((each) => [each.state, mayDoMore(each), isShown(each)])).toEqual([['done', true, true]]);
  });

  test('of glides that were ended because symptoms rose rests for the day, also before the first repetition, and for that leg alone', () => {
    const glide = line('nerve-glide', { sides: ['left', 'right'], start: { setsADay: 2, repsASet: 10, holdS: 0 } });
    const by = prescription(glide);
    const rose = (reps: number) => ({ done: [done(glide, 4, 9, { reps, glide: aGlide('S', { stopped: 'symptoms' }) })] });
    for (const reps of [0, 3]) {
      const { lines, next } = seen(rose(reps), 4, 10, by);
      expect(lines.map(({ state }) => state)).toEqual(['symptoms-rose', 'now']);
      expect(lines.map(isShown)).toEqual([false, true]);
      expect(next?.side).toBe('right');
    }
    expect(seen(rose(3), 5, 10, by).lines.map(({ state }) => state)).toEqual(['now', 'now']);
  });

  test('of glides whose leg rose above its limit has done its set, unless there was no repetition', () => {
    const glide = line('nerve-glide');
    const high = (reps: number) => ({ done: [done(glide, 4, 9, { reps, glide: aGlide('S', { stopped: 'above-limit' }) })] });
    expect(stateOf(high(2), 4, 20, prescription(glide)).state).toBe('done');
    expect(stateOf(high(0), 4, 10, prescription(glide)).state).toBe('now');
  });

  test('is stopped by a red flag until a clinician has seen the person', () => {
    const log = { redFlags: [redFlags(4, 8, { 'bladder-bowel': 'yes' })] };
    expect(stateOf(log, 4, 9)).toEqual({ state: 'stopped', mayStartMs: null, next: null });
    expect(stateOf({ ...log, clearances: [clearance(4, 9)] }, 4, 10).state).toBe('now');
  });
});

describe('the day', () => {
  test('asks the questions first, then no more', () => {
    expect(seen({}, 4, 9).questions).toEqual(['new-day']);
    expect(seen({ redFlags: [redFlags(4, 9)] }, 4, 10).questions).toEqual([]);
  });

  test('asks how it was after the last day of sets, once, and not after a week', () => {
    const log = { done: [done(tap, 3, 9), done(tap, 2, 9)] };
    expect(seen(log, 4, 9).checkInAbout).toBe(dayOf(3));
    expect(seen({ ...log, checkIns: [checkIn(4, 8)] }, 4, 9).checkInAbout).toBeNull();
    expect(seen(log, 6, 9).checkInAbout).toBe(dayOf(3));
    expect(seen(log, 7, 9).checkInAbout).toBeNull();
    expect(seen(log, 3, 10).checkInAbout).toBe(dayOf(2));
  });

  test('names the self-checks that are due', () => {
    const weekly = { ...plan, selfChecks: { ...plan.selfChecks, checks: ['big-toe'] as const } };
    expect(seen({}, 4, 9, weekly).selfChecks).toEqual(['big-toe']);
  });

  test('begins at local midnight', () => {
    const log = doseLog({ prescriptions: [plan] });
    const nowMs = Date.parse('2026-05-04T22:30:00Z');
    expect(today(log, { nowMs, timeZone: 'Europe/Madrid' })?.day).toBe('2026-05-05');
    expect(today(log, { nowMs, timeZone: 'UTC' })?.day).toBe('2026-05-04');
  });

  test('of the change to summer time lets the same time pass between sets', () => {
    const march = { ...plan, at: '2026-03-01T00:00:00.000Z' };
    const set = done(tap, 1, 0, { day: addDays(dayOf(1), -33), endedAt: '2026-03-29T00:30:00.000Z' });
    expect(set.day).toBe('2026-03-29');
    const found = today(doseLog({ prescriptions: [march], done: [set] }), {
      nowMs: Date.parse('2026-03-29T01:00:00Z'),
      timeZone: 'Europe/Madrid',
    });
    expect(found?.lines[0]).toMatchObject({ state: 'later', mayStartMs: Date.parse('2026-03-29T02:40:00Z') });
  });
});

test('three sets are reached by whoever starts in the morning and does each as soon as it may start', () => {
  fc.assert(
    fc.property(fc.integer({ min: 6 * 60, max: 15 * 60 }), (startMinute) => {
      let log = doseLog({ prescriptions: [plan] });
      let nowMs = at(4, 0).nowMs + startMinute * 60_000;
      for (let i = 0; i < 3; i += 1) {
        const next = today(log, { nowMs, timeZone: 'UTC' })?.next;
        expect(next?.mayStartMs).toBeGreaterThanOrEqual(nowMs);
        nowMs = Number(next?.mayStartMs) + 60_000;
        log = { ...log, done: [...log.done, done(tap, 4, 0, { endedAt: new Date(nowMs).toISOString() })] };
      }
      expect(today(log, { nowMs, timeZone: 'UTC' })?.lines[0]?.state).toBe('done');
    }),
  );
});

describe('days a week', () => {
  test.each([
    [1, [0]],
    [2, [0, 3]],
    [3, [0, 2, 4]],
    [4, [0, 1, 2, 3]],
    [5, [0, 1, 2, 3, 4]],
    [7, [0, 1, 2, 3, 4, 5, 6]],
  ])('%i come on these days of a week: %j', (daysAWeek, offsets) => {
    expect(dueInWeek(daysAWeek, dayOf(4))).toEqual(offsets.map((offset) => addDays(dayOf(4), offset)));
  });

  test('none at all is a bug', () => {
    expect(() => nextDueDay(0, [], dayOf(4))).toThrow('at least one day a week');
  });

  test('are never more in any seven days, and every due day comes', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 7 }),
        fc.array(fc.boolean(), { minLength: 30, maxLength: 60 }),
        (daysAWeek, willing) => {
          const days: (typeof plan)['day'][] = [];
          willing.forEach((will, i) => {
            const day = addDays(dayOf(1), i);
            if (will && nextDueDay(daysAWeek, days, day) === day) days.push(day);
          });
          for (const day of days)
            expect(days.filter((each) => each <= day && each > addDays(day, -7)).length).toBeLessThanOrEqual(daysAWeek);
          const next = nextDueDay(daysAWeek, days, addDays(dayOf(1), willing.length));
          expect(next <= addDays(dayOf(1), willing.length + 7)).toBe(true);
        },
      ),
    );
  });
});
