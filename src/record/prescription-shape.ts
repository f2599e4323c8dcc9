import * as v from 'valibot';
import type { Dose, DoseLimits } from '../dose/dose.ts';
import { CAUTION_IDS, PRESCRIBED_EXERCISE_IDS, type PrescribedExercise, type Target } from '../dose/prescribed-exercise.ts';
import type { ProgressionRule } from '../dose/progression-rule.ts';
import { MOST_INTENSITY } from '../symptoms/felt.ts';
import { SELF_CHECK_IDS } from '../symptoms/self-check.ts';
import { degShape, idShape, oneOf, wholeShape } from './shape.ts';

type Shape<T> = v.GenericSchema<unknown, T>;

/** Bounds that keep slips of the keyboard out. Chosen: far above what is prescribed. */
export const MOST_PRESCRIBED = { sets: 20, reps: 200, holdS: 600, restS: 3600, tempoS: 120, days: 30 } as const;

const upTo = (most: number, least = 0) => v.pipe(wholeShape, v.minValue(least), v.maxValue(most));
export const sideShape = oneOf({ left: true, right: true });
export const sidesShape = v.pipe(
  v.array(sideShape),
  v.check((sides) => new Set(sides).size === sides.length, 'must name a side once'),
);
export const prescribedIdShape = v.picklist(PRESCRIBED_EXERCISE_IDS);

export const doseShape = v.strictObject({
  setsADay: upTo(MOST_PRESCRIBED.sets, 1),
  repsASet: upTo(MOST_PRESCRIBED.reps, 1),
  holdS: upTo(MOST_PRESCRIBED.holdS),
}) satisfies Shape<Dose>;

const limitShape = (most: number, least: number) =>
  v.pipe(
    v.strictObject({ least: upTo(most, least), most: upTo(most, least) }),
    v.check((limit) => limit.least <= limit.most, 'must not have a least above its most'),
  );
const limitsShape = v.strictObject({
  setsADay: limitShape(MOST_PRESCRIBED.sets, 1),
  repsASet: limitShape(MOST_PRESCRIBED.reps, 1),
  holdS: limitShape(MOST_PRESCRIBED.holdS, 0),
}) satisfies Shape<DoseLimits>;

const ruleShape = v.strictObject({
  steps: v.array(
    v.strictObject({ field: oneOf({ setsADay: true, repsASet: true, holdS: true }), by: upTo(MOST_PRESCRIBED.reps, 1) }),
  ),
  limits: limitsShape,
  clearRise: upTo(MOST_INTENSITY, 1),
  settledWithin: upTo(MOST_INTENSITY),
  goodDays: upTo(MOST_PRESCRIBED.days, 1),
  goodDaysAfterFlare: upTo(MOST_PRESCRIBED.days, 1),
  doneShare: v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(1)),
  freshDays: upTo(MOST_PRESCRIBED.days, 1),
}) satisfies Shape<ProgressionRule>;

const targetShape = v.variant('kind', [
  v.pipe(
    v.strictObject({ kind: v.literal('range'), fromDeg: degShape, toDeg: degShape }),
    v.check(({ fromDeg, toDeg }) => fromDeg <= toDeg, 'must not end before it begins'),
  ),
  v.strictObject({ kind: v.picklist(['full', 'symptoms']) }),
]) satisfies Shape<Target>;

export const prescribedExerciseShape = v.strictObject({
  id: idShape,
  exercise: prescribedIdShape,
  sides: v.pipe(sidesShape, v.minLength(1)),
  start: doseShape,
  target: targetShape,
  seenBy: v.exactOptional(oneOf({ pose: true, stickers: true })),
  tempoS: v.nullable(upTo(MOST_PRESCRIBED.tempoS, 1)),
  restS: upTo(MOST_PRESCRIBED.restS),
  spread: oneOf({ day: true, together: true }),
  daysAWeek: upTo(7, 1),
  symptomLimit: upTo(MOST_INTENSITY),
  progression: ruleShape,
  cautions: v.array(v.picklist(CAUTION_IDS)),
  basis: oneOf({ 'common-practice': true, therapist: true }),
}) satisfies Shape<PrescribedExercise>;

/** What a prescription says, wherever it stands: in the diary or on its way. */
export const planEntries = {
  by: v.strictObject({ role: oneOf({ therapist: true, patient: true }), name: v.string() }),
  revises: v.nullable(idShape),
  items: v.pipe(
    v.array(prescribedExerciseShape),
    v.check((items) => new Set(items.map(({ id }) => id)).size === items.length, 'must have lines with ids of their own'),
  ),
  selfChecks: v.strictObject({
    checks: v.array(v.picklist(SELF_CHECK_IDS)),
    sides: sidesShape,
    everyDays: v.pipe(wholeShape, v.minValue(1)),
  }),
};
