import { describe, expect, test } from 'vitest';
import { givenPlan, standingOf, takenOn } from '../../src/dose/given-plan.ts';
import { currentPrescription, type Prescription } from '../../src/dose/prescription.ts';
import { questionsDue } from '../../src/symptoms/questions-due.ts';
import { dayOf, momentOf, redFlags } from '../symptoms/told.ts';
import { doseLog, line, prescription } from './plan.ts';

const written = (day: number, over: Partial<Prescription> = {}): Prescription => ({
  ...prescription(line('foot-tap')),
  at: momentOf(day, 9),
  day: dayOf(day),
  ...over,
});
const onDay = (day: number, hour = 18) => ({ at: momentOf(day, hour), day: dayOf(day) });
const ownOf = (day: number, over: Partial<Prescription> = {}) => written(day, { by: { role: 'patient', name: '' }, ...over });

describe('a plan that is taken on', () => {
  test('is what was given, under its id, and counts from the moment it was taken', () => {
    const plan = written(1);
    expect(takenOn(givenPlan(plan), onDay(4))).toEqual({ ...plan, ...onDay(4), writtenAt: momentOf(1, 9) });
  });

  test('and given on keeps the moment at which it was written', () => {
    const given = givenPlan(written(1));
    expect(givenPlan(takenOn(given, onDay(4)))).toEqual(given);
  });

  test('holds instead of what somebody made for themselves after it was written', () => {
    const [plan, own] = [written(1), ownOf(2)];
    expect(standingOf(givenPlan(plan), [own])).toEqual({ kind: 'new' });
    const taken = takenOn(givenPlan(plan), onDay(3));
    expect(currentPrescription([own, taken])).toBe(taken);
  });

  test('asks the red-flag questions again on a day on which they were answered before it came', () => {
    const taken = takenOn(givenPlan(written(1)), onDay(4, 12));
    const log = doseLog({ redFlags: [redFlags(4, 8, {})], prescriptions: [taken] });
    expect(questionsDue(log, dayOf(4))).toEqual(['prescription-changed']);
  });
});

describe('how a plan stands to those that are here', () => {
  test('the same one again is held, whoever changed it since', () => {
    const plan = written(1);
    expect(standingOf(givenPlan(plan), [plan])).toEqual({ kind: 'held' });
    expect(standingOf(givenPlan(plan), [takenOn(givenPlan(plan), onDay(3)), ownOf(5)])).toEqual({ kind: 'held' });
  });

  test('an older one after a newer one is older, whenever the newer one was taken on', () => {
    const [first, second] = [written(1), written(5)];
    const here = [takenOn(givenPlan(second), onDay(6))];
    expect(standingOf(givenPlan(first), here)).toEqual({ kind: 'older', writtenAt: momentOf(5, 9) });
    expect(standingOf(givenPlan(second), [takenOn(givenPlan(first), onDay(8))])).toEqual({ kind: 'new' });
  });

  test('one that a plan here revises is older, even where the clocks say otherwise', () => {
    const first = written(5);
    const second = written(4, { revises: first.id });
    expect(standingOf(givenPlan(first), [takenOn(givenPlan(second), onDay(6))])).toEqual({
      kind: 'older',
      writtenAt: momentOf(4, 9),
    });
  });

  test('what somebody decided alone makes no therapist’s plan older, taken on or not', () => {
    const own = ownOf(5);
    for (const here of [own, takenOn(givenPlan(own), onDay(6))])
      expect(standingOf(givenPlan(written(1)), [here])).toEqual({ kind: 'new' });
  });

  test('of two plans that somebody made alone and took on elsewhere, the older one stays older', () => {
    const taken = takenOn(givenPlan(ownOf(5)), onDay(6));
    expect(standingOf(givenPlan(ownOf(3)), [taken])).toEqual({ kind: 'older', writtenAt: momentOf(5, 9) });
    expect(standingOf(givenPlan(ownOf(6)), [taken])).toEqual({ kind: 'new' });
    expect(standingOf(givenPlan(ownOf(3)), [written(5)])).toEqual({ kind: 'older', writtenAt: momentOf(5, 9) });
  });

  test('an invented plan makes none older', () => {
    expect(standingOf(givenPlan(written(1)), [written(5, { origin: 'example' })])).toEqual({ kind: 'new' });
  });
});
