import { describe, expect, test } from 'vitest';
import type { DoseLog } from '../../src/dose/dose-log.ts';
import { propose } from '../../src/dose/propose.ts';
import type { CheckIn } from '../../src/symptoms/check-in.ts';
import type { SymptomReport } from '../../src/symptoms/symptom-report.ts';
import { aGlide } from '../record/glide-builders.ts';
import { checkIn, clearance, dayOf, momentOf, redFlags, report, selfCheck } from '../symptoms/told.ts';
import { done, doseLog, line, prescription, step } from './plan.ts';

const glide = line('nerve-glide');
const tap = line('foot-tap', {}, 2);
const plan = prescription(glide, tap);
const CALF = { region: 'calf-outer', side: 'left' } as const;
const SOLE = { region: 'sole', side: 'left' } as const;
const ACHE = { intensity: 2, kinds: ['pain'], places: [CALF] } as const;

/** One day of glides with an ache of 2 before and after, and the morning after; changed where said. */
interface DayOfGlides {
  readonly before?: Partial<SymptomReport>;
  readonly after?: Partial<SymptomReport>;
  readonly morning?: Partial<CheckIn> | null;
  readonly reps?: number;
}
function glides(
  n: number,
  { before, after, morning, reps = 10 }: DayOfGlides = {},
): Pick<DoseLog, 'reports' | 'checkIns' | 'done'> {
  return {
    reports: [
      report(n, 9, { ...ACHE, itemId: glide.id, ...before }),
      report(n, 10, { ...ACHE, itemId: glide.id, moment: 'after-set', ...after }),
    ],
    checkIns: morning === null ? [] : [checkIn(n + 1, 8, { ...ACHE, worst: 2, ...morning })],
    done: [done(glide, n, 10, { reps })],
  };
}
const joined = (...days: readonly Pick<DoseLog, 'reports' | 'checkIns' | 'done'>[]) => ({
  reports: days.flatMap(({ reports }) => reports),
  checkIns: days.flatMap(({ checkIns }) => checkIns),
  done: days.flatMap(({ done: sets }) => sets),
});
const proposed = (log: Partial<DoseLog>, n: number, item = glide, by = plan) =>
  propose(by, item, doseLog({ prescriptions: [by], ...log }), dayOf(n));
const two = { setsADay: 2, repsASet: 10, holdS: 0 };
const atTwo = step(plan, glide, 2, { to: two });

describe('a step up', () => {
  test('follows a day that felt good: a second set of nerve glides', () => {
    expect(proposed(glides(3), 4)).toEqual({ kind: 'up', from: glide.start, to: two, aboutDay: dayOf(3), goodDays: 1 });
  });

  test('goes to more repetitions when the sets are at their limit, and stops at the limits', () => {
    const at = (setsADay: number, repsASet: number) => step(plan, glide, 2, { to: { setsADay, repsASet, holdS: 0 } });
    expect(proposed({ ...glides(3, { reps: 30 }), steps: [at(3, 10)] }, 4)).toMatchObject({
      kind: 'up',
      to: { setsADay: 3, repsASet: 15 },
    });
    expect(proposed({ ...glides(3, { reps: 45 }), steps: [at(3, 15)] }, 4)).toMatchObject({
      kind: 'hold',
      reason: { kind: 'at-limit' },
    });
  });

  test('takes as many good days as the therapist asks for', () => {
    const slow = { ...glide, progression: { ...glide.progression, goodDays: 2 } };
    expect(proposed(glides(3), 4, slow)).toMatchObject({ kind: 'hold', reason: { kind: 'more-good-days', have: 1, need: 2 } });
    expect(proposed(joined(glides(3), glides(4)), 5, slow)).toMatchObject({ kind: 'up', goodDays: 2 });
  });

  test('after a flare takes two good days', () => {
    const flare = glides(3, { after: { intensity: 5 } });
    const back = step(plan, glide, 4, { direction: 'back', to: glide.start, aboutDay: dayOf(3) });
    const log = { ...joined(flare, glides(4)), steps: [atTwo, back] };
    expect(proposed(log, 5)).toMatchObject({ kind: 'hold', reason: { kind: 'more-good-days', have: 1, need: 2 } });
    expect(proposed({ ...log, ...joined(flare, glides(4), glides(5)) }, 6)).toMatchObject({ kind: 'up', goodDays: 2 });
  });

  test('asks nothing of a leg without symptoms but to be told so', () => {
    const nothing = { intensity: 0, kinds: 'not-answered', places: 'not-answered' } as const;
    const log = glides(3, { before: nothing, after: nothing, morning: { ...nothing, worst: 0 } });
    expect(proposed(log, 4).kind).toBe('up');
  });
});

describe('the dose holds', () => {
  test.each<readonly [string, Partial<DoseLog>, number, object]>([
    ['before anything was done', {}, 4, { kind: 'nothing-done-yet' }],
    ['without the check-in of the next day', glides(3, { morning: null }), 4, { kind: 'next-day-not-answered' }],
    [
      'when the check-in says no intensity',
      glides(3, { morning: { intensity: 'not-answered' } }),
      4,
      { kind: 'next-day-not-answered' },
    ],
    ['when it says no worst', glides(3, { morning: { worst: 'not-answered' } }), 4, { kind: 'next-day-not-answered' }],
    [
      'when it does not say whether it settled',
      glides(3, { morning: { afterwards: 'not-answered' } }),
      4,
      { kind: 'next-day-not-answered' },
    ],
    [
      'when it does not say how strong the leg is',
      glides(3, { morning: { weakness: 'not-answered' } }),
      4,
      { kind: 'next-day-not-answered' },
    ],
    ['when it does not say where', glides(3, { morning: { places: 'not-answered' } }), 4, { kind: 'next-day-not-answered' }],
    [
      'without an answer before the set',
      glides(3, { before: { intensity: 'not-answered' } }),
      4,
      { kind: 'symptoms-not-answered' },
    ],
    ['without an answer after it', glides(3, { after: { kinds: 'not-answered' } }), 4, { kind: 'symptoms-not-answered' }],
    ['after a mild rise that settled', glides(3, { after: { intensity: 3 } }), 4, { kind: 'mild-rise-settled' }],
    ['after a mild rise in the night', glides(3, { morning: { worst: 3 } }), 4, { kind: 'mild-rise-settled' }],
    [
      'after a flare told as settled without a rise',
      glides(3, { morning: { afterwards: 'settled' } }),
      4,
      { kind: 'mild-rise-settled' },
    ],
    [
      'after a set that was ended because symptoms rose, however much of it was done',
      { ...glides(3), done: [done(glide, 3, 10, { glide: aGlide('S', { stopped: 'symptoms' }) })] },
      4,
      { kind: 'symptoms-rose' },
    ],
    ['after less than the dose', glides(3, { reps: 7 }), 4, { kind: 'dose-not-done', reps: 7, due: 10 }],
    ['once this day has changed it', { ...glides(3), steps: [step(plan, glide, 4, { to: two })] }, 4, { kind: 'changed-today' }],
    ['once that day has changed it', { ...glides(3), steps: [step(plan, glide, 4, { to: two })] }, 5, { kind: 'already-judged' }],
    ['in the middle of a day', joined(glides(3), glides(4, { morning: null })), 4, { kind: 'begun-today' }],
    ['after a long pause', glides(3), 7, { kind: 'too-long-ago', days: 4, limit: 3 }],
  ])('%s', (_, log, on, reason) => {
    expect(proposed(log, on)).toMatchObject({ kind: 'hold', reason });
  });

  test('when another exercise flared that day, or does today', () => {
    const flare = (n: number) => [
      report(n, 11, { ...ACHE, itemId: tap.id }),
      report(n, 12, { ...ACHE, itemId: tap.id, moment: 'after-set', intensity: 6 }),
    ];
    const day = glides(3);
    for (const n of [3, 4]) {
      const log = { ...day, reports: [...day.reports, ...flare(n)] };
      expect(proposed(log, 4)).toMatchObject({ kind: 'hold', reason: { kind: 'flare-elsewhere' } });
    }
  });

  test('when one leg did less than the dose', () => {
    const both = { ...glide, sides: ['left', 'right'] as const };
    expect(proposed(glides(3), 4, both)).toMatchObject({ kind: 'hold', reason: { kind: 'dose-not-done', reps: 0, due: 10 } });
  });
});

describe('a step back', () => {
  test.each<readonly [string, DayOfGlides, object]>([
    ['a clear rise after a set', { after: { intensity: 4 } }, { kind: 'clear-rise', rise: 2, limit: 2 }],
    [
      'a clear rise in the night, settled or not',
      { morning: { worst: 5, afterwards: 'settled' } },
      { kind: 'clear-rise', rise: 3, limit: 2 },
    ],
    ['symptoms further down after a set', { after: { places: [SOLE] } }, { kind: 'further-down', from: CALF, to: SOLE }],
    ['symptoms further down in the morning', { morning: { places: [SOLE] } }, { kind: 'further-down', from: CALF, to: SOLE }],
    ['symptoms not settled', { morning: { afterwards: 'not-settled' } }, { kind: 'not-settled' }],
    [
      'symptoms above the limit with nothing told before',
      { before: { intensity: 'not-answered' }, after: { intensity: 6 } },
      { kind: 'over-limit', worst: 6, limit: 5 },
    ],
  ])('follows %s', (_, day, reason) => {
    expect(proposed({ ...glides(3, day), steps: [atTwo] }, 4)).toEqual({
      kind: 'back',
      from: two,
      to: glide.start,
      aboutDay: dayOf(3),
      reason,
    });
  });

  test('follows a morning above the time before the sets, however mild a rise the therapist allows', () => {
    const lenient = { ...glide, progression: { ...glide.progression, clearRise: 5 } };
    expect(proposed({ ...glides(3, { morning: { intensity: 4, worst: 4 } }), steps: [atTwo] }, 4, lenient)).toMatchObject({
      kind: 'back',
      reason: { kind: 'not-settled' },
    });
    expect(proposed({ ...glides(3, { morning: { intensity: 3, worst: 3 } }), steps: [atTwo] }, 4, lenient)).toMatchObject({
      kind: 'hold',
    });
  });

  test('follows a flare on this very day, also when today had stepped up', () => {
    const log = {
      ...joined(glides(3), glides(4, { morning: null, after: { intensity: 5 } })),
      steps: [step(plan, glide, 4, { to: two })],
    };
    expect(proposed(log, 4)).toMatchObject({ kind: 'back', from: two, to: glide.start, aboutDay: dayOf(4) });
  });

  test('follows yesterday when the flare is told only after the first set of today', () => {
    const log = { ...joined(glides(3, { morning: { worst: 6 } }), glides(4, { morning: null })), steps: [atTwo] };
    expect(proposed(log, 4)).toMatchObject({ kind: 'back', aboutDay: dayOf(3) });
  });

  test('is taken once for one day', () => {
    const back = step(plan, glide, 4, { direction: 'back', from: two, to: glide.start });
    expect(proposed({ ...glides(3, { after: { intensity: 5 } }), steps: [atTwo, back] }, 4)).toMatchObject({
      kind: 'hold',
      reason: { kind: 'already-judged' },
    });
  });

  test('gives back the last gained first, and from the least dose asks for the therapist', () => {
    const flare = glides(3, { after: { intensity: 5 } });
    const to = (setsADay: number, repsASet: number) => [step(plan, glide, 2, { to: { setsADay, repsASet, holdS: 0 } })];
    expect(proposed({ ...flare, steps: to(3, 15) }, 4)).toMatchObject({ kind: 'back', to: { setsADay: 3, repsASet: 10 } });
    expect(proposed({ ...flare, steps: to(2, 5) }, 4)).toMatchObject({ kind: 'back', to: { setsADay: 1, repsASet: 5 } });
    expect(proposed({ ...flare, steps: to(1, 5) }, 4)).toMatchObject({ kind: 'contact', reason: { kind: 'clear-rise' } });
  });

  test('follows a day with a red flag or weakness, also when a clinician has seen the person since', () => {
    const cleared = { steps: [atTwo], clearances: [clearance(4, 9)] };
    expect(proposed({ ...glides(3), ...cleared, redFlags: [redFlags(3, 12, { 'fever-or-fall': 'yes' })] }, 4)).toMatchObject({
      kind: 'back',
      reason: { kind: 'red-flag' },
    });
    expect(proposed({ ...glides(3, { morning: { weakness: 'worse' } }), ...cleared }, 4)).toMatchObject({
      kind: 'back',
      reason: { kind: 'weakness' },
    });
    expect(proposed({ ...glides(3, { after: { kinds: ['pain', 'weakness'] } }), ...cleared }, 4)).toMatchObject({
      kind: 'back',
      reason: { kind: 'weakness' },
    });
  });
});

describe('a stop', () => {
  test('wins over a good day: red flags', () => {
    const found = proposed({ ...glides(3), redFlags: [redFlags(4, 8, { 'saddle-numbness': 'yes' })] }, 4);
    expect(found).toMatchObject({ kind: 'stop', stop: { flags: ['saddle-numbness'], urgency: 'now' } });
  });

  test.each<readonly [string, Partial<DoseLog>]>([
    ['told in the check-in', glides(3, { morning: { weakness: 'worse' } })],
    ['named after a set', glides(3, { after: { kinds: ['weakness'] } })],
    [
      'found in a self-check',
      {
        ...glides(3),
        selfChecks: [
          selfCheck(1, 9, [{ check: 'heel-walk', side: 'left', found: 10 }]),
          selfCheck(4, 8, [{ check: 'heel-walk', side: 'left', found: 3 }]),
        ],
      },
    ],
  ])('follows weakness %s', (_, log) => {
    expect(proposed(log, 4)).toMatchObject({ kind: 'stop', stop: { flags: [], urgency: null } });
  });
});

test('steps of a prescription before count for one day moving the dose once, not for the dose', () => {
  const revised = { ...prescription(glide, tap), at: momentOf(3, 20) };
  const log = { ...glides(3), prescriptions: [plan, revised], steps: [step(plan, glide, 4, { to: two })] };
  expect(propose(revised, glide, doseLog(log), dayOf(5))).toMatchObject({
    kind: 'hold',
    from: glide.start,
    reason: { kind: 'already-judged' },
  });
});
