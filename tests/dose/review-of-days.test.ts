import { describe, expect, test } from 'vitest';
import { concernsIn } from '../../src/dose/concerns.ts';
import { doneByWeek } from '../../src/dose/done-by-week.ts';
import { flareDays } from '../../src/dose/flare-days.ts';
import type { DayDone } from '../../src/dose/progress.ts';
import { rangeBandOf } from '../../src/dose/range-progress.ts';
import { rangeSets } from '../../src/dose/range-sets.ts';
import { symptomTrend } from '../../src/dose/symptom-trend.ts';
import { symptomsByDay } from '../../src/symptoms/symptoms-by-day.ts';
import { deg } from '../../src/units.ts';
import { checkIn, clearance, dayOf, redFlags, report } from '../symptoms/told.ts';
import { done, doseLog, line, prescription, step } from './plan.ts';

const tap = line('foot-tap', { target: { kind: 'range', fromDeg: deg(12), toDeg: deg(18) } });
const glide = line('toe-lift', {}, 2);
const plan = prescription(tap, glide);
const ranges = (...values: readonly number[]) => ({ rangesDeg: values.map(deg) });

describe('the range of each set', () => {
  test('is the middle of its complete repetitions with the error of the exercise, in order of time', () => {
    const sets = [done(tap, 4, 15, ranges(11, 10, 30)), done(tap, 4, 9, ranges(14, 16)), done(tap, 3, 9, ranges())];
    const bandDeg = rangeBandOf('foot-tap', 'pose');
    expect(rangeSets(tap, 'left', sets).map(({ rangeDeg, reps, target }) => [rangeDeg, reps, target])).toEqual([
      [15, 2, 'within'],
      [11, 3, 'within'],
    ]);
    expect(rangeSets(tap, 'left', sets)[0]?.bandDeg).toBe(bandDeg);
    const stickers = done(tap, 4, 9, { ...ranges(14, 16), seenBy: 'stickers' });
    expect(rangeSets(tap, 'left', [stickers])[0]?.bandDeg).toBeCloseTo(1.96 * 0.4, 6);
    expect(rangeSets(tap, 'left', [done(tap, 4, 9, ranges(12 - bandDeg - 0.1))])[0]?.target).toBe('below');
    expect(rangeSets(tap, 'left', [done(tap, 4, 9, ranges(18 + bandDeg + 0.1))])[0]?.target).toBe('above');
  });

  test('there is none of the other leg, of another line, and of what was counted by hand', () => {
    expect(rangeSets(tap, 'right', [done(tap, 4, 9, ranges(14))])).toEqual([]);
    expect(rangeSets(tap, 'left', [done(glide, 4, 9, ranges(14))])).toEqual([]);
    expect(rangeSets(tap, 'left', [done(tap, 4, 9, { rangesDeg: [] })])).toEqual([]);
  });
});

describe('the trend of the strongest symptoms', () => {
  const told = (...most: readonly number[]) =>
    symptomsByDay({ reports: most.map((intensity, i) => report(i + 1, 9, { intensity })), checkIns: [] });

  test('sets the middle of the first three days against that of the last three', () => {
    expect(symptomTrend(told(6, 5, 9, 1, 4, 3, 2))).toEqual({
      earlier: 6,
      later: 3,
      change: -3,
      limit: 2,
      verdict: 'real',
      daysEach: 3,
    });
  });

  test('a point less is within the error of the scale, and one day is no trend', () => {
    expect(symptomTrend(told(4, 3))).toMatchObject({ earlier: 4, later: 3, verdict: 'within-error', daysEach: 1 });
    expect(symptomTrend(told(4))).toBeNull();
    expect(symptomTrend([])).toBeNull();
  });
});

test('weeks hold what their days held; a busy day makes up for no other', () => {
  const days = Array.from(
    { length: 9 },
    (_, i): DayDone => ({ day: dayOf(i + 1), setsDue: 1, setsDone: i === 0 ? 3 : 0, reps: i }),
  );
  expect(doneByWeek(days)).toEqual([
    { day: dayOf(1), setsDue: 7, setsDone: 1, reps: 21 },
    { day: dayOf(8), setsDue: 2, setsDone: 0, reps: 15 },
  ]);
  expect(doneByWeek([])).toEqual([]);
});

describe('what needs attention first', () => {
  const SORE = { intensity: 5, kinds: ['pain'], places: [{ region: 'buttock', side: 'left' }] } as const;
  const flared = (n: number) => ({
    reports: [
      report(n, 9, { ...SORE, intensity: 1, itemId: tap.id }),
      report(n, 10.5, { ...SORE, itemId: tap.id, moment: 'after-set' as const }),
    ],
    done: [done(tap, n, 10)],
  });
  const kinds = (log: Parameters<typeof doseLog>[0], to: number) =>
    concernsIn(doseLog({ prescriptions: [plan], ...log }), dayOf(1), dayOf(to)).map(({ kind }) => kind);

  test('is nothing while all is done and well', () => {
    expect(kinds({ done: [done(tap, 4, 10)], reports: [report(4, 9)] }, 5)).toEqual([]);
  });

  test('begins with a stop, which goes with the clearance', () => {
    const flags = { redFlags: [redFlags(4, 8, { 'saddle-numbness': 'yes' })], done: [done(tap, 3, 10)] };
    expect(kinds(flags, 4)).toEqual(['stopped']);
    expect(kinds({ ...flags, clearances: [clearance(4, 9)] }, 4)).toEqual([]);
    expect(kinds({ checkIns: [checkIn(4, 8, { weakness: 'worse' })], done: [done(tap, 3, 10)] }, 4)).toContain('stopped');
  });

  test('names the last day that flared, of how many, and why', () => {
    const [one, two] = [flared(3), flared(5)];
    const log = doseLog({
      prescriptions: [plan],
      reports: [...one.reports, ...two.reports],
      done: [...one.done, ...two.done, done(glide, 5, 12)],
    });
    expect(flareDays(log, dayOf(1), dayOf(6)).map(({ day, lines }) => [day, lines.map(({ item }) => item.exercise)])).toEqual([
      [dayOf(3), ['foot-tap']],
      [dayOf(5), ['foot-tap']],
    ]);
    expect(concernsIn(log, dayOf(1), dayOf(6))).toMatchObject([
      { kind: 'flares', days: 2, last: { day: dayOf(5), lines: [{ reason: { kind: 'clear-rise', rise: 4 } }] } },
    ]);
  });

  test('a flare on the least dose asks for the therapist', () => {
    const least = { setsADay: 1, repsASet: 5, holdS: 0 };
    const steps = [step(plan, tap, 2, { direction: 'back', to: least, aboutDay: dayOf(1) })];
    expect(kinds({ ...flared(5), steps }, 6)).toEqual(['contact', 'flares']);
  });

  test('says when nothing was done for more than three days, from the plan on when nothing ever was', () => {
    expect(kinds({ done: [done(tap, 4, 10)] }, 7)).toEqual([]);
    expect(concernsIn(doseLog({ prescriptions: [plan], done: [done(tap, 4, 10)] }), dayOf(1), dayOf(8))).toEqual([
      { kind: 'quiet', days: 4, lastDay: dayOf(4) },
    ]);
    expect(concernsIn(doseLog({ prescriptions: [plan] }), dayOf(1), dayOf(8))).toEqual([
      { kind: 'quiet', days: 7, lastDay: null },
    ]);
    expect(concernsIn(doseLog(), dayOf(1), dayOf(8))).toEqual([]);
  });
});
