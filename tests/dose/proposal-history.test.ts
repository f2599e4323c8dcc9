import { describe, expect, test } from 'vitest';
import type { DoseLog } from '../../src/dose/dose-log.ts';
import { proposalHistory } from '../../src/dose/proposal-history.ts';
import { checkIn, clearance, dayOf, momentOf, redFlags, report } from '../symptoms/told.ts';
import { done, doseLog, line, prescription, step } from './plan.ts';

const glide = line('nerve-glide');
const plan = prescription(glide);
const two = { setsADay: 2, repsASet: 10, holdS: 0 };
const ACHE = { intensity: 2, kinds: ['pain'], places: [{ region: 'buttock', side: 'left' }] } as const;

/** A day of one set of glides that went well, and the morning after. */
const good = (n: number) => ({
  reports: [
    report(n, 9, { ...ACHE, itemId: glide.id }),
    report(n, 10.5, { ...ACHE, itemId: glide.id, moment: 'after-set' as const, intensity: 2 }),
  ],
  checkIns: [checkIn(n + 1, 8, { ...ACHE, worst: 2 })],
  done: [done(glide, n, 10)],
});
const lived = (over: Partial<DoseLog>, ...days: readonly ReturnType<typeof good>[]): DoseLog =>
  doseLog({
    prescriptions: [plan],
    reports: days.flatMap(({ reports }) => reports),
    checkIns: days.flatMap(({ checkIns }) => checkIns),
    done: days.flatMap(({ done: sets }) => sets),
    ...over,
  });
const told = (log: DoseLog, from: number, to: number) =>
  proposalHistory(log, dayOf(from), dayOf(to)).map(({ firstDay, lastDay, proposal, answer }) => [
    `${Number(firstDay.slice(-2))}-${Number(lastDay.slice(-2))}`,
    proposal.kind,
    'reason' in proposal ? proposal.reason.kind : null,
    answer.kind,
  ]);

describe('what was proposed on a day', () => {
  test('is what stood when its first set began: the step that the morning allowed, not the one that a later answer allows', () => {
    expect(told(lived({}, good(3), good(4)), 3, 4)).toEqual([
      ['3-3', 'hold', 'nothing-done-yet', 'nothing-to-take'],
      ['4-4', 'up', null, 'not-taken'],
    ]);
  });

  test('was not known before the morning was told', () => {
    const late = { ...good(3), checkIns: [checkIn(4, 20, { ...ACHE, worst: 2 })] };
    expect(told(lived({}, late, good(4)), 4, 4)).toEqual([['4-4', 'hold', 'next-day-not-answered', 'nothing-to-take']]);
  });

  test('is the one at the end of a day without a set, and stays one entry while it stays the same', () => {
    expect(told(lived({}, good(3)), 2, 9)).toEqual([
      ['2-3', 'hold', 'nothing-done-yet', 'nothing-to-take'],
      ['4-6', 'up', null, 'not-taken'],
      ['7-9', 'hold', 'too-long-ago', 'nothing-to-take'],
    ]);
  });

  test('nothing is told of the days before there was a plan', () => {
    const later = { ...plan, day: dayOf(3), at: momentOf(3, 7) };
    const history = proposalHistory(lived({ prescriptions: [later] }), dayOf(1), dayOf(4));
    expect(history.map(({ firstDay, lastDay }) => [firstDay, lastDay])).toEqual([[dayOf(3), dayOf(4)]]);
  });

  test('a stop shows as a stop on the days that it lasts', () => {
    const told4 = redFlags(4, 7, { 'saddle-numbness': 'yes' });
    const stopped = lived({ redFlags: [told4, redFlags(5, 7)], clearances: [clearance(6, 7)] }, good(3));
    expect(told(stopped, 4, 6)).toEqual([
      ['4-5', 'stop', null, 'nothing-to-take'],
      ['6-6', 'hold', 'flare-elsewhere', 'nothing-to-take'],
    ]);
  });
});

describe('what came of it', () => {
  test('a step by the rule was taken, and is told with the proposal that it answered', () => {
    const taken = step(plan, glide, 4, { at: momentOf(4, 8.5), to: two, aboutDay: dayOf(3), reason: 'good-days' });
    const history = proposalHistory(lived({ steps: [taken] }, good(3), good(4)), dayOf(4), dayOf(4));
    expect(history).toHaveLength(1);
    expect(history[0]).toMatchObject({ proposal: { kind: 'up', to: two }, answer: { kind: 'taken', step: taken } });
  });

  test('a step by choice stands beside what was proposed at that time', () => {
    const less = step(plan, glide, 4, {
      at: momentOf(4, 8.5),
      direction: 'back',
      to: { ...glide.start, repsASet: 5 },
      aboutDay: null,
      reason: 'chosen',
      by: 'patient',
    });
    expect(told(lived({ steps: [less] }, good(3), good(4)), 4, 4)).toEqual([['4-4', 'up', null, 'chosen']]);
  });

  test('a step back in the evening comes after what the day began with', () => {
    const flared = {
      ...good(4),
      reports: [
        report(4, 9, { ...ACHE, itemId: glide.id }),
        report(4, 10.5, { ...ACHE, intensity: 6, itemId: glide.id, moment: 'after-set' as const }),
      ],
    };
    const back = step(plan, glide, 4, {
      at: momentOf(4, 19),
      direction: 'back',
      to: { ...glide.start, repsASet: 5 },
      aboutDay: dayOf(4),
      reason: 'clear-rise',
    });
    expect(told(lived({ steps: [back] }, good(3), flared), 4, 4)).toEqual([
      ['4-4', 'up', null, 'not-taken'],
      ['4-4', 'back', 'clear-rise', 'taken'],
    ]);
  });

  test('a step under a plan that was replaced on the same day is there, too', () => {
    const taken = step(plan, glide, 4, { at: momentOf(4, 8.5), to: two, aboutDay: dayOf(3) });
    const other = { ...prescription(line('foot-tap', {}, 2)), day: dayOf(4), at: momentOf(4, 9), revises: plan.id };
    const history = proposalHistory(lived({ steps: [taken], prescriptions: [plan, other] }, good(3)), dayOf(4), dayOf(4));
    expect(history.map(({ item, answer }) => [item.exercise, answer.kind])).toEqual([
      ['foot-tap', 'nothing-to-take'],
      ['nerve-glide', 'taken'],
    ]);
  });
});

test('a plan that gives the other leg a line of its own goes on with what was done before it', () => {
  const both = line('foot-tap', { sides: ['left', 'right'] });
  const old = prescription(both);
  const right = line('foot-tap', { sides: ['right'] }, 2);
  const split = { ...prescription({ ...both, sides: ['left'] }, right), day: dayOf(4), at: momentOf(4, 12), revises: old.id };
  const asked = (n: number) => [report(n, 9, { ...ACHE }), report(n, 10.5, { ...ACHE, moment: 'after-set' })];
  const log = doseLog({
    prescriptions: [old, split],
    reports: asked(3),
    checkIns: [checkIn(4, 8, { ...ACHE, worst: 2 })],
    done: [1, 2, 3].flatMap((set) => [done(both, 3, 9 + set / 10), done(both, 3, 9.5 + set / 10, { side: 'right' })]),
  });
  const history = proposalHistory(log, dayOf(4), dayOf(5));
  expect(history.map(({ item, firstDay, proposal }) => [item.id, firstDay, proposal.kind])).toEqual([
    [both.id, dayOf(4), 'up'],
    [right.id, dayOf(4), 'up'],
  ]);
});
