import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dayVerdict } from '../../src/dose/day-verdict.ts';
import type { Dose } from '../../src/dose/dose.ts';
import type { DoseLog } from '../../src/dose/dose-log.ts';
import { currentDose } from '../../src/dose/dose-step.ts';
import { PRESCRIBED_EXERCISE_IDS } from '../../src/dose/prescribed-exercise.ts';
import { type Proposal, propose } from '../../src/dose/propose.ts';
import { type Felt, SYMPTOM_KINDS } from '../../src/symptoms/felt.ts';
import { mayExercise } from '../../src/symptoms/may-exercise.ts';
import { BODY_REGIONS } from '../../src/symptoms/place.ts';
import { checkIn, clearance, dayOf, redFlags, report } from '../symptoms/told.ts';
import { done, doseLog, line, prescription, step } from './plan.ts';

const FIELDS = ['setsADay', 'repsASet', 'holdS'] as const;
const maybe = <T>(arbitrary: fc.Arbitrary<T>) =>
  fc.oneof({ weight: 6, arbitrary }, { weight: 1, arbitrary: fc.constant('not-answered' as const) });
/** Mostly little, so that good days come up. */
const intensity = maybe(
  fc.oneof({ weight: 4, arbitrary: fc.constantFrom(2, 2, 2, 3) }, { weight: 1, arbitrary: fc.integer({ min: 0, max: 10 }) }),
);
const place = fc.record({
  region: fc.oneof(
    { weight: 5, arbitrary: fc.constant('buttock' as const) },
    { weight: 1, arbitrary: fc.constantFrom(...BODY_REGIONS) },
  ),
  side: fc.constant('left' as const),
});
const felt: fc.Arbitrary<Felt> = fc.record({
  intensity,
  kinds: maybe(
    fc.oneof({ weight: 6, arbitrary: fc.constant(['pain'] as const) }, { weight: 1, arbitrary: fc.subarray([...SYMPTOM_KINDS]) }),
  ),
  places: maybe(fc.array(place, { minLength: 1, maxLength: 2 })),
});
const anyDay = fc.record({
  sets: fc.integer({ min: 0, max: 3 }),
  before: felt,
  after: felt,
  morning: fc.option(
    fc.record({
      felt,
      worst: intensity,
      afterwards: fc.oneof(
        { weight: 5, arbitrary: fc.constant('no-flare' as const) },
        fc.constantFrom('settled', 'not-settled', 'not-answered'),
      ),
      weakness: fc.oneof({ weight: 9, arbitrary: fc.constant('as-before' as const) }, fc.constantFrom('worse', 'not-answered')),
    }),
    { freq: 6 },
  ),
  redFlag: fc.oneof({ weight: 15, arbitrary: fc.constant('no' as const) }, fc.constantFrom('yes', 'not-answered')),
  /** Whether the morning's proposal is agreed to, and how often it is asked for. */
  agrees: fc.integer({ min: 0, max: 2 }),
  isCleared: fc.boolean(),
});
const ache: Felt = { intensity: 2, kinds: ['pain'], places: [{ region: 'buttock', side: 'left' }] };
/** A day on which all goes well. */
const goodDay: typeof anyDay = fc.record({
  sets: fc.constant(3),
  before: fc.constant(ache),
  after: fc.constant(ache),
  morning: fc.constant({ felt: ache, worst: 2, afterwards: 'no-flare', weakness: 'as-before' } as const),
  redFlag: fc.constant('no' as const),
  agrees: fc.integer({ min: 1, max: 2 }),
  isCleared: fc.constant(false),
});
const aDay = fc.oneof({ weight: 3, arbitrary: goodDay }, { weight: 2, arbitrary: anyDay });
const days = fc.array(aDay, { minLength: 1, maxLength: 9 });
const exercise = fc.constantFrom(...PRESCRIBED_EXERCISE_IDS);

interface Morning {
  readonly day: number;
  readonly proposal: Proposal;
  readonly log: DoseLog;
}

/** Somebody's days, in which the proposals are agreed to as the day says; every proposal made, with the log that it was made from. */
function lived(
  plan: readonly (typeof days extends fc.Arbitrary<(infer D)[]> ? D : never)[],
  id: (typeof PRESCRIBED_EXERCISE_IDS)[number],
) {
  const item = line(id, { daysAWeek: 7 });
  const by = prescription(item);
  let log = doseLog({ prescriptions: [by] });
  const mornings: Morning[] = [];
  plan.forEach((lives, i) => {
    const n = i + 2;
    const before = plan[i - 1]?.morning;
    if (before) log = { ...log, checkIns: [...log.checkIns, checkIn(n, 7, { ...before, ...before.felt })] };
    log = { ...log, redFlags: [...log.redFlags, redFlags(n, 7.5, { 'saddle-numbness': lives.redFlag })] };
    if (lives.isCleared) log = { ...log, clearances: [...log.clearances, clearance(n, 7.75)] };
    for (let asked = 0; asked < Math.max(1, lives.agrees); asked += 1) {
      const proposal = propose(by, item, log, dayOf(n));
      mornings.push({ day: n, proposal, log });
      if (lives.agrees === 0 || (proposal.kind !== 'up' && proposal.kind !== 'back')) continue;
      const { kind: direction, from, to, aboutDay } = proposal;
      log = { ...log, steps: [...log.steps, step(by, item, n, { direction, from, to, aboutDay })] };
    }
    const { repsASet } = currentDose(by, item, log.steps, dayOf(n));
    for (let set = 0; set < lives.sets; set += 1) {
      log = {
        ...log,
        reports: [
          ...log.reports,
          report(n, 9 + 3 * set, { ...lives.before, itemId: item.id }),
          report(n, 10 + 3 * set, { ...lives.after, itemId: item.id, moment: 'after-set' }),
        ],
        done: [...log.done, done(item, n, 10 + 3 * set, { reps: repsASet })],
      };
    }
    mornings.push({ day: n, proposal: propose(by, item, log, dayOf(n)), log });
  });
  return { item, by, log, mornings };
}

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
