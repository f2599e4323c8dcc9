import { describe, expect, test } from 'vitest';
import { rangeDifference } from '../../src/compare/range-difference.ts';
import { trialsOf } from '../../src/compare/trials.ts';
import { doneByHand } from '../../src/dose/done-set.ts';
import { checkAnswers } from '../../src/screens/review/check-answers.ts';
import { editSummary } from '../../src/screens/review/edit-summary.ts';
import { markSessions } from '../../src/screens/review/mark-sessions.ts';
import { morningsOf } from '../../src/screens/review/mornings.ts';
import { daysRead, firstDay } from '../../src/screens/review/period.ts';
import { setRows } from '../../src/screens/review/set-rows.ts';
import { deg } from '../../src/units.ts';
import { done, doseLog, line, prescription } from '../dose/plan.ts';
import { edit } from '../record/set-builders.ts';
import { angleMark, checkIn, dayOf, entry, momentOf, selfCheck } from '../symptoms/told.ts';
import { aRep, aSet } from './fake-sets.ts';

const tap = line('foot-tap');

describe('a period', () => {
  test('of weeks ends today, and reads four weeks more than it shows', () => {
    expect(firstDay('2', doseLog(), dayOf(20))).toBe(dayOf(7));
    expect([daysRead('2'), daysRead('8')]).toEqual([42, 84]);
  });

  test('of everything begins with the first day of which anything is known', () => {
    const log = doseLog({ prescriptions: [prescription(tap)], done: [done(tap, 3, 9)] });
    expect(firstDay('all', log, dayOf(20))).toBe(dayOf(1));
    expect(firstDay('all', doseLog(), dayOf(20))).toBe(dayOf(20));
  });
});

describe('the angles of a session', () => {
  const three = (side: 'left' | 'right', first: number, over = {}) =>
    [1, 2, 3].map((trial) => angleMark(4, 9 + trial / 10, { side, trial, angleDeg: deg(first + trial), ...over }));

  test('have mean and spread of the trials, and one leg stands against the other, by the functions of compare', () => {
    const marks = [...three('left', 40), ...three('right', 60)];
    const [session] = markSessions(marks, dayOf(1), dayOf(5));
    const values = (side: string) => marks.filter((each) => each.side === side).map(({ angleDeg }) => angleDeg);
    expect(session?.rows.map(({ side, trials }) => [side, trials])).toEqual([
      ['left', trialsOf(values('left'))],
      ['right', trialsOf(values('right'))],
    ]);
    expect(session?.pairs).toEqual([
      {
        mark: 'first-symptom',
        zero: 'rest',
        foot: 'pulled-up',
        difference: rangeDifference('leg-raise', 'marks', values('left'), values('right')),
      },
    ]);
  });

  test('with the foot held differently, or from another zero, are never put together', () => {
    const marks = [...three('left', 40), ...three('left', 40, { foot: 'relaxed' }), ...three('right', 60, { zero: 'own' })];
    const [session] = markSessions(marks, dayOf(1), dayOf(5));
    expect(session?.rows.map(({ marks: own }) => own.length)).toEqual([3, 3, 3]);
    expect(session?.pairs).toEqual([]);
  });

  test('of other days are left out, the newest session is the first, trials stand in their order', () => {
    const later = angleMark(6, 9, { sessionId: 'b', trial: 2, angleDeg: deg(2) });
    const marks = [later, angleMark(6, 9.5, { sessionId: 'b', trial: 1, angleDeg: deg(1) }), angleMark(4, 9), angleMark(9, 9)];
    const sessions = markSessions(marks, dayOf(3), dayOf(8));
    expect(sessions.map(({ day }) => day)).toEqual([dayOf(6), dayOf(4)]);
    expect(sessions[0]?.rows[0]?.marks.map(({ trial }) => trial)).toEqual([1, 2]);
  });
});

describe('the list of sets', () => {
  const hand = doneByHand({
    ...entry(4, 12),
    kind: 'hand-set',
    exercise: 'foot-tap',
    side: 'left',
    itemId: null,
    reps: 9,
    counted: 'by-hand',
  });

  test('has measured ones and those counted without the camera, the newest first, of these days only', () => {
    const sets = [
      aSet([], { id: 'old', startedAt: momentOf(1, 9) }),
      aSet([], { id: 'one', startedAt: momentOf(3, 9) }),
      aSet([], { id: 'film', startedAt: momentOf(5, 9), source: 'file' }),
    ];
    const log = { done: [hand, done(tap, 3, 9, { id: 'one' })] };
    expect(setRows(log, sets, dayOf(2), dayOf(6), 'UTC').map(({ kind, id }) => [kind, id])).toEqual([
      ['measured', 'film'],
      ['by-hand', hand.id],
      ['measured', 'one'],
    ]);
  });

  test('takes the day that the diary gives a set, not the one where it is looked at', () => {
    const sets = [aSet([], { id: 'one', startedAt: momentOf(3, 23.5) })];
    const log = { done: [done(tap, 3, 23.6, { id: 'one' })] };
    expect(setRows(log, sets, dayOf(4), dayOf(6), 'Asia/Tokyo')).toEqual([]);
    expect(setRows({ done: [] }, sets, dayOf(4), dayOf(6), 'Asia/Tokyo')).toHaveLength(1);
  });
});

describe('what a hand changed', () => {
  const reps = [aRep(1), aRep(2), aRep(3)];
  const two = { kind: 'measured', number: 2 } as const;

  test('is counted as it stands now', () => {
    const edits = [edit({ kind: 'strike', rep: two }), edit({ kind: 'add' }), edit({ kind: 'add' })];
    expect(editSummary({ reps, edits })).toEqual({ struck: 1, added: 2, of: 5 });
    const added = { kind: 'added', id: edits[1]?.id ?? '' } as const;
    expect(editSummary({ reps, edits: [...edits, edit({ kind: 'strike', rep: added })] })).toEqual({
      struck: 1,
      added: 1,
      of: 4,
    });
  });

  test('is nothing without a change, and when every change was taken back', () => {
    expect(editSummary({ reps, edits: [] })).toBeNull();
    expect(editSummary({ reps, edits: [edit({ kind: 'strike', rep: two }), edit({ kind: 'restore', rep: two })] })).toBeNull();
  });
});

test('mornings: the last answer about a day counts, days of sets without one are open, today is not yet', () => {
  const log = {
    done: [done(tap, 3, 9), done(tap, 4, 9), done(tap, 5, 9), done(tap, 6, 9)],
    checkIns: [
      checkIn(4, 8, { afterwards: 'not-settled' }),
      checkIn(4, 9, { afterwards: 'settled' }),
      checkIn(5, 8, { afterwards: 'not-settled' }),
      checkIn(6, 8, { afterwards: 'not-answered' }),
    ],
  };
  expect(morningsOf(log, dayOf(1), dayOf(6))).toEqual({ told: 2, well: 1, notSettled: 1, open: 1 });
});

test('checks of strength: every answer of each leg in order, worse against the one before, also an earlier day’s', () => {
  const steps = (n: number, found: number | 'not-answered') => selfCheck(n, 9, [{ check: 'heel-walk', side: 'left', found }]);
  const history = [steps(1, 9), steps(8, 5), steps(9, 'not-answered'), steps(10, 8)];
  expect(checkAnswers(history, dayOf(5), dayOf(12))).toEqual([
    {
      check: 'heel-walk',
      legs: {
        left: [
          { day: dayOf(8), found: 5, worse: true },
          { day: dayOf(10), found: 8, worse: false },
        ],
        right: [],
      },
    },
  ]);
});
