import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mayExercise } from '../../src/symptoms/may-exercise.ts';
import { RED_FLAG_IDS, RED_FLAGS } from '../../src/symptoms/red-flags.ts';
import { checkIn, clearance, dayOf, redFlags, report, safetyLog, selfCheck } from './told.ts';

describe('one round of questions', () => {
  const gateOf = (answers: Parameters<typeof redFlags>[2]) =>
    mayExercise(safetyLog({ redFlags: [redFlags(1, 9, answers)] }), dayOf(1));

  test.each(RED_FLAG_IDS)('a yes to %s stops', (id) => {
    expect(gateOf({ [id]: 'yes' })).toEqual({ kind: 'stopped', flags: [id], weakness: [], urgency: RED_FLAGS[id].urgency });
  });

  test('the more urgent of two flags decides whom to call', () => {
    expect(gateOf({ 'foot-drop-worse': 'yes', 'saddle-numbness': 'yes' })).toMatchObject({ urgency: 'now' });
  });

  test('what is not answered is no yes', () => {
    expect(gateOf({ 'bladder-bowel': 'not-answered' })).toEqual({ kind: 'may' });
  });

  test('every flag says where it comes from', () => {
    for (const id of RED_FLAG_IDS) expect(RED_FLAGS[id].sources.length).toBeGreaterThan(0);
  });
});

describe('after a yes', () => {
  const yes = redFlags(4, 9, { 'saddle-numbness': 'yes' });
  const stopped = { kind: 'stopped', flags: ['saddle-numbness'], weakness: [], urgency: 'now' };
  test.each([
    { name: 'nothing more', log: { redFlags: [yes] }, on: 4, may: false },
    { name: 'all no later that day', log: { redFlags: [yes, redFlags(4, 12)] }, on: 4, may: false },
    { name: 'a clearance before it', log: { redFlags: [yes], clearances: [clearance(4, 8)] }, on: 4, may: false },
    { name: 'a clearance at the same moment', log: { redFlags: [yes], clearances: [clearance(4, 9)] }, on: 4, may: false },
    { name: 'a clearance after it', log: { redFlags: [yes], clearances: [clearance(4, 10)] }, on: 4, may: true },
    {
      name: 'a clearance, and a yes again',
      log: { redFlags: [yes, redFlags(4, 11, { 'saddle-numbness': 'yes' })], clearances: [clearance(4, 10)] },
      on: 4,
      may: false,
    },
    { name: 'a night', log: { redFlags: [yes] }, on: 5, may: false },
    {
      name: 'a night and no answer',
      log: { redFlags: [yes, redFlags(5, 9, { 'saddle-numbness': 'not-answered' })] },
      on: 5,
      may: false,
    },
    { name: 'a night and a no', log: { redFlags: [yes, redFlags(5, 9)] }, on: 5, may: false },
    { name: 'a week of no', log: { redFlags: [yes, ...[5, 6, 7, 11].map((n) => redFlags(n, 9))] }, on: 11, may: false },
    { name: 'a no, and a clearance', log: { redFlags: [yes, redFlags(5, 9)], clearances: [clearance(5, 10)] }, on: 5, may: true },
    { name: 'a clearance of the day after', log: { redFlags: [yes], clearances: [clearance(5, 9)] }, on: 4, may: false },
  ])('and $name, may: $may', ({ log, on, may }) => {
    expect(mayExercise(safetyLog(log), dayOf(on))).toEqual(may ? { kind: 'may' } : stopped);
  });

  test('the day before was open', () => {
    expect(mayExercise(safetyLog({ redFlags: [yes] }), dayOf(3))).toEqual({ kind: 'may' });
  });
});

describe('weakness', () => {
  const toe = (found: 'cannot-lift' | 'as-strong') => [{ check: 'big-toe', side: 'left', found } as const];
  test.each([
    { name: 'worse in the check-in', log: { checkIns: [checkIn(4, 8, { weakness: 'worse' })] }, cause: 'told-worse' },
    {
      name: 'new after a set',
      log: { reports: [report(4, 9, { kinds: ['pain'] }), report(4, 10, { kinds: ['pain', 'weakness'] })] },
      cause: 'new-weakness',
    },
    {
      name: 'worse in a self-check',
      log: { selfChecks: [selfCheck(1, 9, toe('as-strong')), selfCheck(4, 9, toe('cannot-lift'))] },
      cause: 'self-check-worse',
    },
  ])('$name stops until a clearance', ({ log, cause }) => {
    expect(mayExercise(safetyLog(log), dayOf(4))).toMatchObject({
      kind: 'stopped',
      flags: [],
      urgency: null,
      weakness: [{ kind: cause }],
    });
    expect(mayExercise(safetyLog(log), dayOf(9)).kind).toBe('stopped');
    expect(mayExercise(safetyLog({ ...log, clearances: [clearance(5, 9)] }), dayOf(5))).toEqual({ kind: 'may' });
  });

  test.each([
    {
      name: 'that was there from the first report',
      reports: [report(4, 9, { kinds: ['weakness'] }), report(4, 10, { kinds: ['weakness'] })],
    },
    {
      name: 'after a report without an answer',
      reports: [report(4, 9, { kinds: 'not-answered' }), report(4, 10, { kinds: ['weakness'] })],
    },
    {
      name: 'that comes and goes',
      reports: [report(1, 9, { kinds: ['weakness'] }), report(3, 9), report(4, 10, { kinds: ['weakness'] })],
    },
  ])('$name is not new', ({ reports }) => {
    expect(mayExercise(safetyLog({ reports }), dayOf(4))).toEqual({ kind: 'may' });
  });
});

test('weakness named again after more than two weeks without it is new', () => {
  const again = (n: number) => [report(1, 9, { kinds: ['weakness'] }), report(2, 9), report(n, 9, { kinds: ['weakness'] })];
  expect(mayExercise(safetyLog({ reports: again(15) }), dayOf(15)).kind).toBe('may');
  expect(mayExercise(safetyLog({ reports: again(16) }), dayOf(16)).kind).toBe('stopped');
});

test('whatever else is told in whatever order, a yes without a later clearance stops', () => {
  const answer = fc.constantFrom('yes', 'no', 'not-answered');
  const round = fc.record({
    hour: fc.integer({ min: 0, max: 23 }),
    answers: fc.record(Object.fromEntries(RED_FLAG_IDS.map((id) => [id, answer]))),
  });
  const day = fc.integer({ min: 1, max: 6 });
  const rounds = fc.array(fc.tuple(day, round), { maxLength: 8 });
  const clearances = fc.array(fc.tuple(day, fc.integer({ min: 0, max: 23 })), { maxLength: 3 });
  fc.assert(
    fc.property(rounds, clearances, fc.integer({ min: 1, max: 6 }), (told, cleared, on) => {
      const log = safetyLog({
        redFlags: told.map(([n, { hour, answers }]) => redFlags(n, hour, answers)),
        clearances: cleared.map(([n, hour]) => clearance(n, hour)),
      });
      const found = mayExercise(log, dayOf(on));
      const open = log.redFlags.some(
        (each) =>
          each.day <= dayOf(on) &&
          Object.values(each.answers).includes('yes') &&
          !log.clearances.some(({ at, day: seen }) => at > each.at && seen <= dayOf(on)),
      );
      if (open) expect(found.kind).toBe('stopped');
      expect(mayExercise({ ...log, redFlags: log.redFlags.toReversed() }, dayOf(on))).toEqual(found);
    }),
  );
});
