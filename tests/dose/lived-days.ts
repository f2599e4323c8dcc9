import fc from 'fast-check';
import type { DoseLog } from '../../src/dose/dose-log.ts';
import { currentDose } from '../../src/dose/dose-step.ts';
import { PRESCRIBED_EXERCISE_IDS } from '../../src/dose/prescribed-exercise.ts';
import { type Proposal, propose } from '../../src/dose/propose.ts';
import { type Felt, SYMPTOM_KINDS } from '../../src/symptoms/felt.ts';
import { BODY_REGIONS } from '../../src/symptoms/place.ts';
import { checkIn, clearance, dayOf, momentOf, redFlags, report } from '../symptoms/told.ts';
import { done, doseLog, line, prescription, step } from './plan.ts';

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
/** Days in a row, most of them good. */
export const days = fc.array(aDay, { minLength: 1, maxLength: 9 });
export const exercise = fc.constantFrom(...PRESCRIBED_EXERCISE_IDS);

interface Morning {
  readonly day: number;
  readonly proposal: Proposal;
  readonly log: DoseLog;
}

/** Somebody's days, in which the proposals are agreed to as the day says; every proposal made, with the log that it was made from. */
export function lived(
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
      // After all that was told in the morning, as the proposal is.
      const at = momentOf(n, 8 + asked / 10);
      log = { ...log, steps: [...log.steps, step(by, item, n, { at, direction, from, to, aboutDay })] };
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
