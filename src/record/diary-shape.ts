import * as v from 'valibot';
import type { HandSet, SetLink } from '../dose/done-set.ts';
import type { DoseStep } from '../dose/dose-step.ts';
import type { Prescription } from '../dose/prescription.ts';
import type { Removal } from '../dose/removal.ts';
import { EXERCISE_IDS } from '../exercises/exercise.ts';
import { ANGLE_MARKS, type AngleMark, FOOT_HELD } from '../symptoms/angle-mark.ts';
import type { CheckIn } from '../symptoms/check-in.ts';
import type { Clearance } from '../symptoms/clearance.ts';
import { MOST_INTENSITY, SYMPTOM_KINDS } from '../symptoms/felt.ts';
import { BODY_REGIONS } from '../symptoms/place.ts';
import { RED_FLAGS, type RedFlagAnswers, type RedFlagId } from '../symptoms/red-flags.ts';
import { BIG_TOE, HEEL_WALK_STEPS, type SelfCheck } from '../symptoms/self-check.ts';
import type { SymptomReport } from '../symptoms/symptom-report.ts';
import type { DiaryEntry } from './diary-entry.ts';
import { doseShape, planEntries, prescribedIdShape, sideShape } from './prescription-shape.ts';
import { dayShape, degShape, idShape, momentShape, oneOf, originShape, wholeShape } from './shape.ts';

type Shape<T> = v.GenericSchema<unknown, T>;

const NOT = 'not-answered';
const or = <S extends v.GenericSchema>(shape: S) => v.union([shape, v.literal(NOT)]);
const intensityShape = or(v.pipe(wholeShape, v.maxValue(MOST_INTENSITY)));

const entryEntries = {
  id: idShape,
  schema: v.literal(1),
  origin: originShape,
  at: momentShape,
  day: dayShape,
};
const placeShape = v.strictObject({ region: v.picklist(BODY_REGIONS), side: sideShape });
const feltEntries = {
  intensity: intensityShape,
  kinds: or(v.array(v.picklist(SYMPTOM_KINDS))),
  places: or(v.array(placeShape)),
};

const prescriptionShape = v.strictObject({
  ...entryEntries,
  kind: v.literal('prescription'),
  ...planEntries,
  writtenAt: v.exactOptional(momentShape),
}) satisfies Shape<Prescription>;

const doseStepShape = v.strictObject({
  ...entryEntries,
  kind: v.literal('dose-step'),
  prescriptionId: idShape,
  itemId: idShape,
  direction: oneOf({ up: true, back: true }),
  from: doseShape,
  to: doseShape,
  aboutDay: v.nullable(dayShape),
  reason: v.string(),
  by: oneOf({ rule: true, patient: true }),
}) satisfies Shape<DoseStep>;

const handSetShape = v.strictObject({
  ...entryEntries,
  kind: v.literal('hand-set'),
  exercise: prescribedIdShape,
  side: sideShape,
  itemId: v.nullable(idShape),
  reps: wholeShape,
  counted: oneOf({ 'by-hand': true, 'by-metronome': true }),
}) satisfies Shape<HandSet>;

const setLinkShape = v.strictObject({
  ...entryEntries,
  kind: v.literal('set-link'),
  setId: idShape,
  prescriptionId: idShape,
  itemId: idShape,
}) satisfies Shape<SetLink>;

const reportShape = v.strictObject({
  ...entryEntries,
  ...feltEntries,
  kind: v.literal('symptoms'),
  moment: oneOf({ 'before-set': true, 'after-set': true }),
  setId: v.nullable(idShape),
  itemId: v.nullable(idShape),
}) satisfies Shape<SymptomReport>;

const checkInShape = v.strictObject({
  ...entryEntries,
  ...feltEntries,
  kind: v.literal('check-in'),
  aboutDay: dayShape,
  worst: intensityShape,
  afterwards: oneOf({ 'no-flare': true, settled: true, 'not-settled': true, [NOT]: true }),
  weakness: oneOf({ 'as-before': true, worse: true, [NOT]: true }),
}) satisfies Shape<CheckIn>;

const answerShape = oneOf({ yes: true, no: true, [NOT]: true });
const answersShape = v.strictObject(
  Object.fromEntries(Object.keys(RED_FLAGS).map((id) => [id, answerShape])) as Readonly<Record<RedFlagId, typeof answerShape>>,
);
const redFlagsShape = v.strictObject({
  ...entryEntries,
  kind: v.literal('red-flags'),
  answers: answersShape,
}) satisfies Shape<RedFlagAnswers>;

const clearanceShape = v.strictObject({
  ...entryEntries,
  kind: v.literal('clearance'),
  note: v.string(),
}) satisfies Shape<Clearance>;

const findingShape = v.variant('check', [
  v.strictObject({ side: sideShape, check: v.literal('big-toe'), found: or(v.picklist(BIG_TOE)) }),
  v.strictObject({
    side: sideShape,
    check: v.literal('heel-walk'),
    found: or(v.pipe(wholeShape, v.maxValue(HEEL_WALK_STEPS))),
  }),
  v.strictObject({
    side: sideShape,
    check: v.literal('heel-stand'),
    found: or(v.pipe(v.number(), v.finite(), v.minValue(0))),
  }),
  v.strictObject({ side: sideShape, check: v.picklist(['foot-slap', 'forefoot-sinks']), found: answerShape }),
]);
const selfCheckShape = v.strictObject({
  ...entryEntries,
  kind: v.literal('self-check'),
  findings: v.array(findingShape),
}) satisfies Shape<SelfCheck>;

const angleMarkShape = v.strictObject({
  ...entryEntries,
  kind: v.literal('angle-mark'),
  exercise: v.picklist(EXERCISE_IDS),
  side: sideShape,
  mark: v.picklist(ANGLE_MARKS),
  trial: v.pipe(wholeShape, v.minValue(1)),
  angleDeg: degShape,
  zero: oneOf({ rest: true, own: true }),
  errorDeg: v.pipe(
    degShape,
    v.check((error) => error >= 0, 'must not be below 0'),
  ),
  method: oneOf({ followed: true, landmarks: true, corrected: true }),
  from: oneOf({ camera: true, window: true, file: true, photo: true }),
  foot: v.nullable(v.picklist(FOOT_HELD)),
  place: v.nullable(placeShape),
  sessionId: idShape,
}) satisfies Shape<AngleMark>;

/** What a set was that is gone. */
export const whatWasDoneShape = v.strictObject({
  exercise: v.picklist([...EXERCISE_IDS, 'own']),
  side: sideShape,
  doneAt: momentShape,
}) satisfies Shape<NonNullable<Removal['what']>>;
const removalShape = v.strictObject({
  ...entryEntries,
  kind: v.literal('removal'),
  recordId: idShape,
  of: oneOf({ set: true, 'hand-set': true }),
  what: v.nullable(whatWasDoneShape),
}) satisfies Shape<Removal>;

/** What is read back from the diary, or comes in from a file, is a `DiaryEntry` only after this. */
export const diaryEntryShape = v.variant('kind', [
  prescriptionShape,
  doseStepShape,
  handSetShape,
  setLinkShape,
  reportShape,
  checkInShape,
  redFlagsShape,
  clearanceShape,
  selfCheckShape,
  angleMarkShape,
  removalShape,
]) satisfies Shape<DiaryEntry>;
