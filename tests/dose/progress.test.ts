import { describe, expect, test } from 'vitest';
import { rangeChangeOf } from '../../src/compare/range-error.ts';
import { progress } from '../../src/dose/progress.ts';
import { addDays } from '../../src/symptoms/calendar-day.ts';
import { deg } from '../../src/units.ts';
import { dayOf, momentOf, report } from '../symptoms/told.ts';
import { done, doseLog, line, prescription, step } from './plan.ts';

const target = { kind: 'range', fromDeg: deg(12), toDeg: deg(20) } as const;
const tap = line('foot-tap', { target });
const plan = prescription(tap);
const ranges = (...values: readonly number[]) => ({ rangesDeg: values.map(deg) });
const seen = (log: Partial<Parameters<typeof doseLog>[0]>, to: number, count: number, by = plan) => {
  const found = progress(doseLog({ prescriptions: [by], ...log }), dayOf(to), count);
  const [first] = found?.lines ?? [];
  if (!found || !first) throw new Error('expected a line');
  return { ...found, line: first };
};

test('without a prescription there is no progress', () => {
  expect(progress(doseLog(), dayOf(4), 7)).toBeNull();
});

describe('sets done against due', () => {
  test('are counted day by day; a busy day does not make up for a missed one', () => {
    const sets = [1, 2, 3, 4, 5].map((hour) => done(tap, 2, hour));
    const { line: found, from, to } = seen({ done: [...sets, done(tap, 4, 9)] }, 4, 3);
    expect([from, to]).toEqual([dayOf(2), dayOf(4)]);
    expect(found.days).toEqual([
      { day: dayOf(2), setsDue: 3, setsDone: 5, reps: 75 },
      { day: dayOf(3), setsDue: 3, setsDone: 0, reps: 0 },
      { day: dayOf(4), setsDue: 3, setsDone: 1, reps: 15 },
    ]);
    expect(found).toMatchObject({ setsDue: 9, setsDoneOfDue: 4, daysDone: 2 });
  });

  test('nothing was due before there was a prescription', () => {
    expect(seen({}, 2, 4).line.days.map(({ setsDue }) => setsDue)).toEqual([0, 0, 3, 3]);
    expect(seen({}, 2, 4).line.days[0]?.day).toBe(addDays(dayOf(1), -2));
  });

  test('what was due follows the dose and the prescription of that day, and rest days have none', () => {
    const steps = [step(plan, tap, 3, { to: { setsADay: 2, repsASet: 15, holdS: 0 } })];
    const revised = {
      ...prescription({ ...tap, start: { setsADay: 1, repsASet: 10, holdS: 0 } }),
      day: dayOf(4),
      at: momentOf(4, 0),
    };
    expect(seen({ steps, prescriptions: [plan, revised] }, 4, 3).line.days.map(({ setsDue }) => setsDue)).toEqual([3, 2, 1]);
    const stand = line('heel-stand');
    expect(seen({ done: [done(stand, 2, 9)] }, 4, 3, prescription(stand)).line.days.map(({ setsDue }) => setsDue)).toEqual([
      1, 0, 1,
    ]);
  });
});

describe('the range', () => {
  test('of foot taps measured in two ways compares only those of the newest way, and says that there are others', () => {
    const stickers = (...values: readonly number[]) => ({ ...ranges(...values), seenBy: 'stickers' as const });
    const log = {
      done: [
        done(tap, 2, 9, ranges(30, 30, 30)),
        done(tap, 2, 12, stickers(10, 10, 10)),
        done(tap, 3, 9, ranges(31, 31, 31)),
        done(tap, 4, 9, stickers(14, 14, 14)),
        done(tap, 4, 10, { ...ranges(40, 40, 40), side: 'right' }),
      ],
    };
    const range = seen(log, 4, 3).line.range;
    expect(range).toMatchObject({ seenBy: 'stickers', mixed: true, otherSide: null });
    expect(range?.days.map(({ rangeDeg }) => rangeDeg)).toEqual([10, 31, 14]);
    expect(range?.change).toMatchObject({
      ok: true,
      value: { differenceDeg: 4, mdcDeg: rangeChangeOf('foot-tap', 'occasions', 'stickers') },
    });
    // Each with the error of its own way; a day of the other one with the wider of both.
    expect(range?.days.map(({ bandDeg }) => bandDeg / 1.96)).toEqual([0.4, 0.7, 0.4].map((sem) => expect.closeTo(sem, 6)));
    expect(seen({ done: [done(tap, 2, 9, ranges(30))] }, 4, 3).line.range).toMatchObject({ seenBy: 'pose', mixed: false });
  });

  test('is the median of a day with its error band, against the target', () => {
    const log = {
      done: [
        done(tap, 2, 9, ranges(8, 9)),
        done(tap, 2, 12, ranges(10)),
        done(tap, 3, 9, ranges(11, 11, 11)),
        done(tap, 4, 9, ranges(25, 25, 25)),
      ],
    };
    const days = seen(log, 4, 3).line.range?.days;
    expect(days?.map(({ day, rangeDeg, target: against }) => [day, rangeDeg, against])).toEqual([
      [dayOf(2), 9, 'below'],
      // Within the error of the target's edge: it cannot be told from inside.
      [dayOf(3), 11, 'within'],
      [dayOf(4), 25, 'above'],
    ]);
    expect(days?.[0]?.bandDeg).toBeCloseTo(1.96 * 0.7, 6);
  });

  test('is compared over the days and with the other leg by the error functions', () => {
    const log = {
      done: [
        done(tap, 2, 9, ranges(10, 10, 10)),
        done(tap, 4, 9, ranges(15, 15, 15)),
        done(tap, 3, 9, { ...ranges(15.5, 15.5, 15.5), side: 'right' }),
      ],
    };
    expect(seen(log, 4, 3).line.range).toMatchObject({
      change: { ok: true, value: { differenceDeg: 5, verdict: 'real' } },
      otherSide: { ok: true, value: { differenceDeg: -0.5, verdict: 'within-error' } },
    });
    expect(seen({ done: log.done.slice(0, 1) }, 4, 3).line.range).toMatchObject({ change: null, otherSide: null });
    const few = [done(tap, 2, 9, ranges(10)), done(tap, 3, 9, ranges(20))];
    expect(seen({ done: few }, 4, 3).line.range?.change).toMatchObject({ ok: false, error: { kind: 'too-few-repetitions' } });
  });

  test('is null when nothing was measured; a big toe has one, too', () => {
    expect(seen({ done: [done(tap, 3, 9)] }, 4, 3).line.range).toBeNull();
    const toe = line('toe-lift');
    expect(seen({ done: [done(toe, 3, 9, ranges(9, 9, 9))] }, 4, 3, prescription(toe)).line.range?.days).toMatchObject([
      { rangeDeg: 9 },
    ]);
  });

  test('without a target range is set against none', () => {
    const full = prescription(line('foot-tap'));
    expect(seen({ done: [done(tap, 3, 9, ranges(9, 9, 9))] }, 4, 3, full).line.range?.days[0]?.target).toBeNull();
  });
});

test('symptoms are those of the days looked at, with where they moved', () => {
  const at = (n: number, region: 'sole' | 'calf-back' | 'buttock') =>
    report(n, 9, { intensity: 3, places: [{ region, side: 'left' }] });
  const { symptoms, shift } = seen({ reports: [at(1, 'sole'), at(2, 'calf-back'), at(4, 'buttock')] }, 4, 3);
  expect(symptoms.map(({ day }) => day)).toEqual([dayOf(2), dayOf(4)]);
  expect(shift).toMatchObject({ kind: 'centralising', from: { region: 'calf-back' }, to: { region: 'buttock' } });
});
