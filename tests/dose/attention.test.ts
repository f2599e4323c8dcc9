import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { attentionOn, urgencyOf } from '../../src/dose/attention.ts';
import type { DoseLog } from '../../src/dose/dose-log.ts';
import { personFacts } from '../../src/dose/person-facts.ts';
import { propose } from '../../src/dose/propose.ts';
import { addDays } from '../../src/symptoms/calendar-day.ts';
import { mayExercise } from '../../src/symptoms/may-exercise.ts';
import { checkIn, clearance, dayOf, redFlags, report } from '../symptoms/told.ts';
import { days, exercise, lived } from './lived-days.ts';
import { done, doseLog, line, prescription } from './plan.ts';

const glide = line('nerve-glide');
const plan = prescription(glide);
const CALM = { intensity: 2, kinds: ['pain'], places: [{ region: 'buttock', side: 'left' }] } as const;
/** One day of sets after which symptoms are as said, and the morning after. */
const aDay = (n: number, after = 2): Partial<DoseLog> => ({
  prescriptions: [plan],
  reports: [
    report(n, 9, { ...CALM, itemId: glide.id }),
    report(n, 10, { ...CALM, intensity: after, itemId: glide.id, moment: 'after-set' }),
  ],
  checkIns: [checkIn(n + 1, 8, { ...CALM, worst: after })],
  done: [done(glide, n, 10)],
});
const attention = (log: Partial<DoseLog>, n: number, seenUntil: number | null = null) =>
  attentionOn(personFacts(doseLog(log)), seenUntil === null ? null : dayOf(seenUntil), dayOf(n));
const kinds = (...of: Parameters<typeof attention>) => attention(...of).map(({ kind }) => kind);

describe('what needs attention', () => {
  test('is nothing for somebody of whom nothing is known', () => {
    expect(attention({}, 20)).toEqual([]);
    expect(personFacts(doseLog())).toEqual({ lastActivity: null, plan: null, stop: null, flare: null, steps: [] });
  });

  test('is the step that the rule offers, from the day after the sets for as long as it is fresh', () => {
    const log = aDay(3);
    const { freshDays } = glide.progression;
    expect(kinds(log, 3)).toEqual([]);
    expect(attention(log, 4)).toEqual([
      { kind: 'step-proposed', steps: [{ exercise: 'nerve-glide', sides: ['left'], aboutDay: dayOf(3), freshDays }] },
    ]);
    expect(kinds(log, 3 + freshDays)).toEqual(['step-proposed']);
    expect(kinds(log, 4 + freshDays)).not.toContain('step-proposed');
  });

  test('is a flare for a week, and no step up beside it', () => {
    expect(attention(aDay(3, 7), 4)).toEqual([{ kind: 'flare', day: dayOf(3), reason: 'clear-rise' }]);
    expect(kinds(aDay(3, 7), 10)).toContain('flare');
    expect(kinds(aDay(3, 7), 11)).not.toContain('flare');
  });

  test('is a red flag until it is cleared, however long ago, and first of all', () => {
    const log = { ...aDay(3, 7), redFlags: [redFlags(4, 9, { 'saddle-numbness': 'yes' })] };
    expect(attention(log, 4)[0]).toEqual({
      kind: 'stopped',
      stop: { flags: ['saddle-numbness'], weakness: [], urgency: 'now' },
    });
    expect(kinds(log, 30, 29)).toEqual(['stopped']);
    expect(kinds({ ...log, clearances: [clearance(5, 9)] }, 6)).toEqual(['flare']);
  });

  test('is silence: a week without a word from the last one, or from the plan', () => {
    expect(kinds(aDay(3, 2), 10)).not.toContain('quiet');
    // The check-in came on the fourth.
    expect(attention(aDay(3, 2), 11)).toEqual([{ kind: 'quiet', days: 7 }]);
    expect(attention({ prescriptions: [plan] }, 7)).toEqual([]);
    expect(attention({ prescriptions: [plan] }, 8)).toEqual([{ kind: 'quiet', days: null }]);
  });

  test('is no news once it was seen', () => {
    expect(kinds(aDay(3, 7), 5, 5)).toEqual([]);
    expect(kinds(aDay(3, 7), 5, 2)).toEqual(['flare']);
    expect(kinds(aDay(3), 4, 4)).toEqual([]);
    expect(kinds(aDay(3), 11, 8)).toEqual([]);
  });
});

test('the most urgent comes first: the emergency service, weakness, a flare, a step, silence, nothing', () => {
  const stopped = (urgency: 'now' | null) => ({ kind: 'stopped', stop: { flags: [], weakness: [], urgency } }) as const;
  const order = [
    [stopped('now')],
    [stopped(null)],
    [{ kind: 'flare', day: dayOf(1), reason: 'clear-rise' } as const],
    [{ kind: 'step-proposed', steps: [] } as const],
    [{ kind: 'quiet', days: 9 } as const],
    [],
  ];
  const found = order.map(urgencyOf);
  expect(found).toEqual(found.toSorted((a, b) => a - b));
  expect(new Set(found).size).toBe(order.length);
});

test('however the days went, what is kept tells of every later day just what the rule and the gate say on it', () => {
  fc.assert(
    fc.property(days, exercise, fc.integer({ min: 1, max: 12 }), (lives, id, later) => {
      const { item, by, log } = lived(lives, id);
      const facts = personFacts(log);
      const day = addDays(dayOf(lives.length + 1), later);
      const found = attentionOn(facts, null, day);
      const proposal = propose(by, item, log, day);
      const stopped = mayExercise(log, day).kind === 'stopped';
      expect(found.some(({ kind }) => kind === 'stopped')).toBe(stopped);
      expect(found.some(({ kind }) => kind === 'step-proposed')).toBe(proposal.kind === 'up');
      if (proposal.kind === 'back' || proposal.kind === 'contact') expect(facts.flare?.day).toBe(proposal.aboutDay);
    }),
    { numRuns: 200 },
  );
});
