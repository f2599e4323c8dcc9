import fc from 'fast-check';
import {
  CAUTION_IDS,
  PRESCRIBED_EXERCISE_IDS,
  type PrescribedExercise,
  type Target,
} from '../../src/dose/prescribed-exercise.ts';
import type { Prescription } from '../../src/dose/prescription.ts';
import { SELF_CHECK_IDS } from '../../src/symptoms/self-check.ts';
import { deg } from '../../src/units.ts';
import { dayOf } from '../symptoms/told.ts';

const whole = (least: number, most: number) => fc.integer({ min: least, max: most });
const sides = (least: number) => fc.uniqueArray(fc.constantFrom('left' as const, 'right' as const), { minLength: least });
const limits = (least: number, most: number) =>
  fc.tuple(whole(least, most), whole(least, most)).map(([a, b]) => ({ least: Math.min(a, b), most: Math.max(a, b) }));
const moment = fc
  .date({ min: new Date('2020-01-01T00:00:00.000Z'), max: new Date('2060-01-01T00:00:00.000Z'), noInvalidDate: true })
  .map((date) => date.toISOString());
const anyDeg = fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => value + 0);
const range: fc.Arbitrary<Target> = fc
  .tuple(anyDeg, anyDeg)
  .map(([a, b]) => ({ kind: 'range', fromDeg: deg(Math.min(a, b)), toDeg: deg(Math.max(a, b)) }));
const target: fc.Arbitrary<Target> = fc.oneof(range, fc.constantFrom<Target>({ kind: 'full' }, { kind: 'symptoms' }));

const item: fc.Arbitrary<PrescribedExercise> = fc.record({
  id: fc.uuid(),
  exercise: fc.constantFrom(...PRESCRIBED_EXERCISE_IDS),
  sides: sides(1),
  start: fc.record({ setsADay: whole(1, 20), repsASet: whole(1, 200), holdS: whole(0, 600) }),
  target,
  tempoS: fc.option(whole(1, 120)),
  restS: whole(0, 3600),
  spread: fc.constantFrom('day', 'together'),
  daysAWeek: whole(1, 7),
  symptomLimit: whole(0, 10),
  progression: fc.record({
    steps: fc.array(
      fc.record({ field: fc.constantFrom('setsADay' as const, 'repsASet' as const, 'holdS' as const), by: whole(1, 200) }),
      { maxLength: 4 },
    ),
    limits: fc.record({ setsADay: limits(1, 20), repsASet: limits(1, 200), holdS: limits(0, 600) }),
    clearRise: whole(1, 10),
    settledWithin: whole(0, 10),
    goodDays: whole(1, 30),
    goodDaysAfterFlare: whole(1, 30),
    doneShare: fc.double({ min: 0, max: 1, noNaN: true }).map((share) => share + 0),
    freshDays: whole(1, 30),
  }),
  cautions: fc.array(fc.constantFrom(...CAUTION_IDS), { maxLength: 6 }),
  basis: fc.constantFrom('common-practice', 'therapist'),
});

/** Any prescription with at least one line that the diary could hold. */
export const anyPrescription: fc.Arbitrary<Prescription> = fc.record(
  {
    kind: fc.constant('prescription' as const),
    id: fc.uuid(),
    schema: fc.constant(1 as const),
    origin: fc.constantFrom('own' as const, 'example' as const),
    at: moment,
    day: fc.constant(dayOf(3)),
    by: fc.record({
      role: fc.constantFrom('therapist' as const, 'patient' as const),
      // Any characters at all, halves of pairs too.
      name: fc.string({ unit: 'binary', maxLength: 40 }),
    }),
    writtenAt: moment,
    revises: fc.option(fc.uuid()),
    items: fc.uniqueArray(item, { minLength: 1, maxLength: 6, selector: ({ id }) => id }),
    selfChecks: fc.record({
      checks: fc.array(fc.constantFrom(...SELF_CHECK_IDS), { maxLength: 5 }),
      sides: sides(0),
      everyDays: whole(1, 1000),
    }),
  },
  {
    requiredKeys: ['kind', 'id', 'schema', 'origin', 'at', 'day', 'by', 'revises', 'items', 'selfChecks'],
  },
);
