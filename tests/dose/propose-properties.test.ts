import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dayVerdict } from '../../src/dose/day-verdict.ts';
import type { Dose } from '../../src/dose/dose.ts';
import { currentDose } from '../../src/dose/dose-step.ts';
import { propose } from '../../src/dose/propose.ts';
import { mayExercise } from '../../src/symptoms/may-exercise.ts';
import { checkIn, dayOf, report } from '../symptoms/told.ts';
import { days, exercise, lived } from './lived-days.ts';
import { done, doseLog, line, prescription, step } from './plan.ts';

const FIELDS = ['setsADay', 'repsASet', 'holdS'] as const;

const isWithin = (dose: Dose, limits: ReturnType<typeof line>['progression']['limits']) =>
  FIELDS.every((field) => dose[field] >= limits[field].least && dose[field] <= limits[field].most);

test('the proposal never leaves the limits, moves in one field at most, up upwards and back downwards', () => {
  fc.assert(
    fc.property(days, exercise, (plan, id) => {
      const { item, mornings } = lived(plan, id);
      for (const { proposal } of mornings) {
        expect(isWithin(proposal.from, item.progression.limits)).toBe(true);
        if (proposal.kind !== 'up' && proposal.kind !== 'back') continue;
        expect(isWithin(proposal.to, item.progression.limits)).toBe(true);
        const moved = FIELDS.map((field) => proposal.to[field] - proposal.from[field]).filter((by) => by !== 0);
        expect(moved.length).toBe(1);
        expect(Math.sign(Number(moved[0]))).toBe(proposal.kind === 'up' ? 1 : -1);
      }
    }),
  );
});

test('limits hold also for a prescription whose start or steps lie outside them', () => {
  const any = fc.record({
    setsADay: fc.integer({ min: 0, max: 20 }),
    repsASet: fc.integer({ min: 0, max: 99 }),
    holdS: fc.integer({ min: 0, max: 99 }),
  });
  fc.assert(
    fc.property(any, any, exercise, (start, to, id) => {
      const item = line(id, { start });
      const by = prescription(item);
      for (const steps of [[], [step(by, item, 2, { to })]]) {
        const reports = [report(3, 9, { itemId: item.id }), report(3, 10, { itemId: item.id, moment: 'after-set' })];
        const log = doseLog({
          prescriptions: [by],
          steps,
          reports,
          checkIns: [checkIn(4, 8)],
          done: [done(item, 3, 10, { reps: 9999 })],
        });
        const proposal = propose(by, item, log, dayOf(4));
        expect(['up', 'hold']).toContain(proposal.kind);
        expect(isWithin(proposal.kind === 'up' ? proposal.to : proposal.from, item.progression.limits)).toBe(true);
      }
    }),
  );
});

test('a step up follows only a day that was good in everything, whose next day was answered, with no flare since', () => {
  let ups = 0;
  fc.assert(
    fc.property(days, exercise, (plan, id) => {
      const { item, by, mornings } = lived(plan, id);
      for (const { day, proposal, log } of mornings) {
        if (proposal.kind !== 'up') continue;
        ups += 1;
        expect(dayVerdict(item, currentDose(by, item, log.steps, proposal.aboutDay), log, proposal.aboutDay)).toEqual({
          kind: 'good',
        });
        const morning = log.checkIns.find(({ aboutDay }) => aboutDay === proposal.aboutDay);
        for (const answer of [morning?.intensity, morning?.worst, morning?.afterwards, morning?.weakness]) {
          expect(answer).toBeDefined();
          expect(answer).not.toBe('not-answered');
        }
        for (let n = 2; n <= day; n += 1) {
          if (dayOf(n) <= proposal.aboutDay) continue;
          expect(dayVerdict(item, proposal.from, log, dayOf(n)).kind).not.toBe('flare');
        }
      }
    }),
    { numRuns: 300 },
  );
  // The days made up above do lead to steps: the loop looked at something.
  expect(ups).toBeGreaterThan(20);
});

test('the dose never rises twice on one day, however often it is asked for', () => {
  let ups = 0;
  fc.assert(
    fc.property(days, exercise, (plan, id) => {
      const { log } = lived(plan, id);
      const raised = log.steps.filter(({ direction }) => direction === 'up').map(({ day }) => day);
      ups += raised.length;
      expect(new Set(raised).size).toBe(raised.length);
    }),
    { numRuns: 300 },
  );
  expect(ups).toBeGreaterThan(20);
});

test('red flags win, and so does weakness: while sets are stopped nothing else is proposed', () => {
  let stops = 0;
  fc.assert(
    fc.property(days, exercise, (plan, id) => {
      for (const { day, proposal, log } of lived(plan, id).mornings) {
        const gate = mayExercise(log, dayOf(day));
        expect(proposal.kind === 'stop').toBe(gate.kind === 'stopped');
        if (gate.kind === 'stopped') stops += 1;
        const seen = log.clearances.some((each) => each.day === dayOf(day));
        if (!seen && log.redFlags.some((round) => round.day === dayOf(day) && round.answers['saddle-numbness'] === 'yes'))
          expect(proposal.kind).toBe('stop');
      }
    }),
  );
  expect(stops).toBeGreaterThan(20);
});

test('one answer missing in the morning holds the dose', () => {
  const answers = fc.constantFrom('intensity', 'worst', 'afterwards', 'weakness');
  fc.assert(
    fc.property(answers, exercise, (missing, id) => {
      const item = line(id);
      const by = prescription(item);
      const log = doseLog({
        prescriptions: [by],
        reports: [report(3, 9, { itemId: item.id }), report(3, 10, { itemId: item.id, moment: 'after-set' })],
        done: [done(item, 3, 10, { reps: 9999 })],
      });
      const kindOf = (over: object) => propose(by, item, { ...log, checkIns: [checkIn(4, 8, over)] }, dayOf(4)).kind;
      expect(kindOf({ [missing]: 'not-answered' })).toBe('hold');
    }),
  );
});
