import * as v from 'valibot';
import { EXERCISE_IDS } from '../exercises/exercise.ts';
import { exerciseDefinitionShape } from '../exercises/exercise-definition.ts';
import type { GlideResult, MeasuredRep, SetResult } from '../measure/set-result.ts';
import { POSE_MODELS } from '../pose/model.ts';
import { personIdShape } from './person.ts';
import type { RepEdit } from './rep-edit.ts';
import { degShape, idShape, manyOf, momentShape, msShape, oneOf, ratioShape, wholeShape } from './shape.ts';
import type { SetHeader, StoredSet } from './stored-set.ts';

type Shape<T> = v.GenericSchema<unknown, T>;

const sideShape = oneOf({ left: true, right: true });
const exerciseShape = v.picklist([...EXERCISE_IDS, 'own']);

export const repShape = v.strictObject({
  number: v.pipe(wholeShape, v.minValue(1)),
  startMs: msShape,
  peakMs: msShape,
  endMs: msShape,
  startDeg: degShape,
  peakDeg: degShape,
  rangeDeg: degShape,
  holdMs: msShape,
  complete: v.boolean(),
  flags: v.array(
    oneOf({
      partial: true,
      'knee-bent': true,
      'tracking-gap': true,
      unfinished: true,
      'past-onset': true,
      sinking: true,
      doubtful: true,
      'toes-along': true,
      recounted: true,
    }),
  ),
  uncertaintyDeg: degShape,
  source: oneOf({ landmarks: true, flow: true, fused: true, stickers: true }),
  footDeg: v.nullable(degShape),
  footUncertaintyDeg: v.nullable(degShape),
  upMs: v.nullable(msShape),
  sankAfterMs: v.nullable(msShape),
}) satisfies Shape<MeasuredRep>;

const warningShape = oneOf({
  'camera-too-turned': true,
  'camera-turned': true,
  'foot-small': true,
  'leg-hidden': true,
  'often-lost': true,
  'low-frame-rate': true,
  'little-texture': true,
  'points-jumped': true,
  'far-leg': true,
  'other-leg-up': true,
  'camera-moved': true,
  'sticker-lost': true,
  'sticker-jumped': true,
  'sticker-glare': true,
  'sticker-like-surround': true,
});

const curveShape = v.pipe(
  v.strictObject({
    tMs: manyOf(msShape, Number.isFinite),
    angleDeg: manyOf(v.nullable(degShape), (angle) => angle === null || Number.isFinite(angle)),
  }),
  v.check(({ tMs, angleDeg }) => tMs.length === angleDeg.length, 'must have as many angles as times'),
);

const patternShape = oneOf({ slide: true, tension: true, unclear: true });

const glideShape = v.strictObject({
  pattern: patternShape,
  cycles: v.array(
    v.strictObject({
      startMs: msShape,
      endMs: msShape,
      pattern: patternShape,
      phaseDeg: v.nullable(degShape),
      certainty: v.pipe(v.number(), v.minValue(0), v.maxValue(1)),
      footRangeDeg: v.nullable(degShape),
      headRangeDeg: v.nullable(degShape),
      reason: v.nullable(
        oneOf({
          'head-still': true,
          'foot-still': true,
          'head-hidden': true,
          'foot-hidden': true,
          'head-seldom': true,
          between: true,
        }),
      ),
    }),
  ),
  slideShare: v.nullable(ratioShape),
  footRangeDeg: v.nullable(degShape),
  headRangeDeg: v.nullable(degShape),
  headUncertaintyDeg: v.nullable(degShape),
  legHeld: v.nullable(
    v.strictObject({
      medianDeg: degShape,
      highestDeg: degShape,
      uncertaintyDeg: degShape,
      limitDeg: degShape,
      limitFrom: oneOf({ marked: true, held: true }),
    }),
  ),
  stopped: v.nullable(oneOf({ 'above-limit': true, symptoms: true })),
}) satisfies Shape<GlideResult>;

export const resultShape = v.strictObject({
  exercise: exerciseShape,
  side: sideShape,
  size: v.strictObject({ width: wholeShape, height: wholeShape }),
  frames: wholeShape,
  framesUsed: wholeShape,
  durationMs: msShape,
  reps: v.array(repShape),
  count: wholeShape,
  partialCount: wholeShape,
  notFound: v.exactOptional(wholeShape),
  summary: v.nullable(v.strictObject({ medianPeakDeg: degShape, medianRangeDeg: degShape, uncertaintyDeg: degShape })),
  kneeLimitDeg: v.nullable(degShape),
  onset: v.nullable(v.strictObject({ tMs: msShape, angleDeg: v.nullable(degShape) })),
  glide: v.nullable(glideShape),
  quality: v.strictObject({ cameraTurnDeg: v.nullable(degShape), warnings: v.array(warningShape) }),
  curve: curveShape,
}) satisfies Shape<SetResult>;

const headerEntries = {
  id: idShape,
  schema: v.literal(2),
  startedAt: momentShape,
  exercise: exerciseShape,
  side: sideShape,
  targetReps: v.nullable(v.pipe(wholeShape, v.minValue(1))),
  definition: v.exactOptional(exerciseDefinitionShape),
  person: personIdShape,
  source: oneOf({ camera: true, file: true, example: true, recording: true, window: true }),
  fileName: v.exactOptional(v.string()),
  model: v.picklist([...POSE_MODELS, 'stickers']),
};
export const headerShape = v.pipe(
  v.strictObject(headerEntries),
  v.check(
    ({ exercise, definition }) => (exercise === 'own') === (definition !== undefined),
    'must have a definition with an own exercise, and only there',
  ),
) satisfies Shape<SetHeader>;

const editEntries = {
  id: idShape,
  schema: v.literal(1),
  setId: idShape,
  at: momentShape,
  note: v.exactOptional(v.string()),
};
const repRefShape = v.variant('kind', [
  v.strictObject({ kind: v.literal('measured'), number: wholeShape }),
  v.strictObject({ kind: v.literal('added'), id: idShape }),
]);
export const editShape = v.variant('kind', [
  v.strictObject({ ...editEntries, kind: v.picklist(['strike', 'restore']), rep: repRefShape }),
  v.strictObject({ ...editEntries, kind: v.literal('add') }),
]) satisfies Shape<RepEdit>;

/** What is read back from the store is a `StoredSet` only after this. */
export const storedSetShape = v.strictObject({
  ...headerEntries,
  state: oneOf({ running: true, finished: true, interrupted: true }),
  reps: v.array(repShape),
  result: v.nullable(resultShape),
  edits: v.array(editShape),
}) satisfies Shape<StoredSet>;
