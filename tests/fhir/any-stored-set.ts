import fc from 'fast-check';
import { EXERCISE_IDS } from '../../src/exercises/exercise.ts';
import type { ExerciseDefinition } from '../../src/exercises/exercise-definition.ts';
import type { GlideResult, MeasuredRep, SetResult } from '../../src/measure/set-result.ts';
import { POSE_MODELS } from '../../src/pose/model.ts';
import { SELF } from '../../src/record/person.ts';
import type { RepEdit, RepRef } from '../../src/record/rep-edit.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { deg, ms, ratio } from '../../src/units.ts';
import { anyDeg, anyMs, maybe, moment, side, typed, whole } from './any-value.ts';

const rep = (number: number): fc.Arbitrary<MeasuredRep> =>
  fc.record({
    number: fc.constant(number),
    startMs: anyMs,
    peakMs: anyMs,
    endMs: anyMs,
    startDeg: anyDeg,
    peakDeg: anyDeg,
    rangeDeg: anyDeg,
    holdMs: anyMs,
    complete: fc.boolean(),
    flags: fc.subarray([
      'partial',
      'knee-bent',
      'tracking-gap',
      'unfinished',
      'past-onset',
      'sinking',
      'doubtful',
      'recounted',
    ] as const),
    uncertaintyDeg: anyDeg,
    source: fc.constantFrom('landmarks', 'flow', 'fused'),
    footDeg: maybe(anyDeg),
    footUncertaintyDeg: maybe(anyDeg),
    upMs: maybe(anyMs),
    sankAfterMs: maybe(anyMs),
  });
const reps = whole(0, 5).chain((n) => fc.tuple(...Array.from({ length: n }, (_, i) => rep(i + 1))));

const definition: fc.Arbitrary<ExerciseDefinition> = fc.record({
  name: fc.constantFrom('Heel slides (invented)', 'Übung 3', '=1+1'),
  angle: fc.constantFrom('ankle-dorsiflexion', 'knee-flexion', 'foot-elevation'),
  direction: fc.constantFrom('rises', 'falls'),
  posture: fc.constantFrom('upright', 'lying', 'standing'),
  side: fc.constantFrom('left', 'right', 'either'),
  noticeDeg: fc.constant(deg(3)),
  leastDeg: fc.constant(deg(8)),
  completeShare: fc.double({ min: 0.2, max: 0.95, noNaN: true }) as fc.Arbitrary<ExerciseDefinition['completeShare']>,
  leastMs: fc.constant(ms(300)),
}) as fc.Arbitrary<ExerciseDefinition>;

const share = fc.double({ min: 0, max: 1, noNaN: true });
const pattern = fc.constantFrom('slide' as const, 'tension' as const, 'unclear' as const);
const glide: fc.Arbitrary<GlideResult> = fc.record({
  pattern,
  cycles: fc.array(
    fc.record({
      startMs: anyMs,
      endMs: anyMs,
      pattern,
      phaseDeg: maybe(anyDeg),
      certainty: share,
      footRangeDeg: maybe(anyDeg),
      headRangeDeg: maybe(anyDeg),
      reason: maybe(fc.constantFrom('head-still', 'foot-still', 'head-hidden', 'foot-hidden', 'head-seldom', 'between')),
    }),
    { maxLength: 4 },
  ),
  slideShare: maybe(share.map(ratio)),
  footRangeDeg: maybe(anyDeg),
  headRangeDeg: maybe(anyDeg),
  headUncertaintyDeg: maybe(anyDeg),
  legHeld: maybe(
    fc.record({
      medianDeg: anyDeg,
      highestDeg: anyDeg,
      uncertaintyDeg: anyDeg,
      limitDeg: anyDeg,
      limitFrom: fc.constantFrom('marked', 'held'),
    }),
  ),
  stopped: maybe(fc.constantFrom('above-limit', 'symptoms')),
});

const result = (
  exercise: StoredSet['exercise'],
  leg: StoredSet['side'],
  measured: readonly MeasuredRep[],
): fc.Arbitrary<SetResult> =>
  fc.record({
    exercise: fc.constant(exercise),
    side: fc.constant(leg),
    size: fc.record({ width: whole(1, 4000), height: whole(1, 4000) }),
    frames: whole(0, 5000),
    framesUsed: whole(0, 5000),
    durationMs: anyMs,
    reps: fc.constant(measured),
    count: fc.constant(measured.filter(({ complete }) => complete).length),
    partialCount: fc.constant(measured.filter(({ complete }) => !complete).length),
    summary: maybe(fc.record({ medianPeakDeg: anyDeg, medianRangeDeg: anyDeg, uncertaintyDeg: anyDeg })),
    kneeLimitDeg: maybe(anyDeg),
    onset: maybe(fc.record({ tMs: anyMs, angleDeg: maybe(anyDeg) })),
    glide: exercise === 'nerve-glide' ? maybe(glide) : fc.constant(null),
    quality: fc.record({
      cameraTurnDeg: maybe(anyDeg),
      warnings: fc.subarray(['camera-turned', 'foot-small', 'leg-hidden', 'low-frame-rate', 'camera-moved', 'far-leg'] as const),
    }),
    curve: fc
      .array(fc.tuple(anyMs, maybe(anyDeg)), { maxLength: 40 })
      .map((points) => ({ tMs: points.map(([t]) => t), angleDeg: points.map(([, angle]) => angle) })),
  });

const refs: fc.Arbitrary<RepRef> = whole(1, 6).map((number) => ({ kind: 'measured', number }));
/** Changes of one set; a struck one may be one that was added. */
const edits = (setId: string): fc.Arbitrary<readonly RepEdit[]> =>
  fc
    .array(fc.tuple(fc.uuid(), moment, fc.constantFrom('strike', 'restore', 'add'), refs, fc.boolean(), fc.option(typed)), {
      maxLength: 5,
    })
    // As a store holds them: by moment, then by id.
    .map((all) => all.toSorted(([a, x], [b, y]) => (`${x} ${a}` < `${y} ${b}` ? -1 : 1)))
    .map((all) =>
      all.map(([id, at, kind, rep, ofAdded, note], i): RepEdit => {
        const base = { id, schema: 1 as const, setId, at, ...(note === null ? {} : { note }) };
        const before = all[i - 1];
        if (kind === 'add') return { ...base, kind: 'add' };
        return {
          ...base,
          kind: kind as 'strike',
          rep: ofAdded && before?.[2] === 'add' ? { kind: 'added', id: before[0] } : rep,
        };
      }),
    );

/** Any set that is over. */
export const anySet: fc.Arbitrary<StoredSet> = fc
  .tuple(fc.uuid(), fc.constantFrom(...EXERCISE_IDS, 'own' as const), side, reps, definition, fc.boolean())
  .chain(([id, exercise, leg, measured, own, isFinished]) =>
    fc
      .record({
        startedAt: moment,
        targetReps: maybe(whole(1, 100)),
        person: fc.oneof(fc.constant(SELF), fc.uuid()),
        source: fc.constantFrom('camera', 'file', 'example', 'recording', 'window'),
        fileName: maybe(typed),
        model: fc.constantFrom(...POSE_MODELS),
        result: isFinished ? result(exercise, leg, measured) : fc.constant(null),
        edits: edits(id),
      })
      .map(
        ({ fileName, ...rest }): StoredSet => ({
          id,
          schema: 2,
          exercise,
          side: leg,
          ...(exercise === 'own' ? { definition: own } : {}),
          ...(fileName === null ? {} : { fileName }),
          ...rest,
          source: rest.source as StoredSet['source'],
          state: isFinished ? 'finished' : 'interrupted',
          reps: measured,
        }),
      ),
  );
