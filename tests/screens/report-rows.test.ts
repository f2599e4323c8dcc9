import { expect, test } from 'vitest';
import { checkRows } from '../../src/screens/report/check-rows.ts';
import { isInvented } from '../../src/screens/report/is-invented.ts';
import { safetyOfDays } from '../../src/screens/report/safety-events.ts';
import { symptomRows } from '../../src/screens/report/symptom-rows.ts';
import { checkIn, clearance, dayOf, redFlags, report, selfCheck } from '../symptoms/told.ts';

const EMPTY = { redFlags: [], clearances: [], reports: [], checkIns: [], selfChecks: [] } as const;
const at = (region: 'buttock' | 'sole') => [{ region, side: 'left' }] as const;

test('a row a day: least and most, furthest down, and the check-in on the day it looks back on', () => {
  const log = {
    reports: [
      report(2, 9, { intensity: 2, places: at('buttock') }),
      report(2, 10, { intensity: 5, places: at('sole') }),
      report(5, 9, { intensity: 'not-answered', places: 'not-answered', kinds: 'not-answered' }),
    ],
    checkIns: [checkIn(3, 8, { afterwards: 'not-settled', weakness: 'worse', intensity: 1 })],
  };
  expect(symptomRows(log, dayOf(1), dayOf(6), 1)).toEqual([
    { from: dayOf(2), least: 2, most: 5, furthest: at('sole')[0], afterwards: 'not-settled', weaker: true },
    { from: dayOf(3), least: 1, most: 1, furthest: null, afterwards: null, weaker: false },
    { from: dayOf(5), least: null, most: null, furthest: null, afterwards: null, weaker: false },
  ]);
});

test('a row a week takes the worst of its days, and nothing from outside of the days asked for', () => {
  const log = {
    reports: [report(1, 9, { intensity: 9 }), report(3, 9, { intensity: 4 }), report(12, 9, { intensity: 7 })],
    checkIns: [checkIn(4, 8, { afterwards: 'settled' }), checkIn(5, 8, { afterwards: 'no-flare' })],
  };
  expect(symptomRows(log, dayOf(2), dayOf(11), 7)).toEqual([
    { from: dayOf(2), least: 0, most: 4, furthest: null, afterwards: 'settled', weaker: false },
  ]);
});

test('a check has its first and its last answer, each leg by itself; worse is told against days before, too', () => {
  const toe = (found: 'as-strong' | 'easily-pushed-down' | 'not-answered') =>
    [{ check: 'big-toe', side: 'left', found }] as const;
  const checks = [
    selfCheck(1, 9, toe('as-strong')),
    selfCheck(3, 9, toe('easily-pushed-down')),
    selfCheck(4, 9, toe('not-answered')),
    selfCheck(5, 9, [...toe('as-strong'), { check: 'heel-walk', side: 'right', found: 0 }]),
  ];
  expect(checkRows(checks, dayOf(2), dayOf(9))).toEqual([
    {
      check: 'big-toe',
      side: 'left',
      first: { day: dayOf(3), found: 'easily-pushed-down' },
      last: { day: dayOf(5), found: 'as-strong' },
      worse: true,
    },
    { check: 'heel-walk', side: 'right', first: { day: dayOf(5), found: 0 }, last: null, worse: false },
  ]);
  expect(checkRows(checks, dayOf(4), dayOf(9))[0]).toMatchObject({ worse: false });
});

test('what stopped and what cleared comes in order of time; open questions are counted', () => {
  const log = {
    ...EMPTY,
    redFlags: [
      redFlags(1, 9, { 'saddle-numbness': 'yes' }),
      redFlags(3, 9, { 'bladder-bowel': 'yes', 'fever-or-fall': 'not-answered' }),
    ],
    clearances: [clearance(4, 9)],
    checkIns: [checkIn(5, 8, { weakness: 'worse' })],
  };
  const { rounds, unanswered, events } = safetyOfDays(log, dayOf(2), dayOf(9));
  expect([rounds, unanswered]).toEqual([1, 1]);
  expect(events).toMatchObject([
    { kind: 'flags', day: dayOf(3), flags: ['bladder-bowel'] },
    { kind: 'cleared', day: dayOf(4) },
    { kind: 'weakness', day: dayOf(5), cause: 'told-worse' },
  ]);
});

test('one invented entry in these days is enough, one from before is not', () => {
  const log = {
    ...EMPTY,
    prescriptions: [],
    steps: [],
    done: [],
    angleMarks: [],
    removals: [],
    reports: [{ ...report(3, 9), origin: 'example' as const }],
  };
  expect(isInvented(log, dayOf(3))).toBe(true);
  expect(isInvented(log, dayOf(4))).toBe(false);
});
