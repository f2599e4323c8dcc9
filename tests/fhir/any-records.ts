import fc from 'fast-check';
import type { Dose } from '../../src/dose/dose.ts';
import { PRESCRIBED_EXERCISE_IDS } from '../../src/dose/prescribed-exercise.ts';
import { EXERCISE_IDS } from '../../src/exercises/exercise.ts';
import type { ExerciseDefinition } from '../../src/exercises/exercise-definition.ts';
import type { GlideResult, MeasuredRep, SetResult } from '../../src/measure/set-result.ts';
import { POSE_MODELS } from '../../src/pose/model.ts';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import { SELF } from '../../src/record/person.ts';
import type { RepEdit, RepRef } from '../../src/record/rep-edit.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { ANGLE_MARKS, FOOT_HELD } from '../../src/symptoms/angle-mark.ts';
import { addDays } from '../../src/symptoms/calendar-day.ts';
import { SYMPTOM_KINDS } from '../../src/symptoms/felt.ts';
import { BODY_REGIONS } from '../../src/symptoms/place.ts';
import { RED_FLAG_IDS } from '../../src/symptoms/red-flags.ts';
import { BIG_TOE, type SelfCheck } from '../../src/symptoms/self-check.ts';
import { deg, ms, ratio } from '../../src/units.ts';
import { anyPrescription } from '../record/any-prescription.ts';
import { dayOf } from '../symptoms/told.ts';

const whole = (least: number, most: number) => fc.integer({ min: least, max: most });
const side = fc.constantFrom('left' as const, 'right' as const);
const origin = fc.constantFrom('own' as const, 'own' as const, 'example' as const);
const moment = fc
  .date({ min: new Date('2020-01-01T00:00:00.000Z'), max: new Date('2060-01-01T00:00:00.000Z'), noInvalidDate: true })
  .map((date) => date.toISOString());
const day = whole(0, 4000).map((n) => addDays(dayOf(1), n));
/** Any characters at all, halves of pairs and control characters too. */
const typed = fc.string({ unit: 'binary', maxLength: 30 });
/** Plus 0: JSON has no negative zero, and a store none to tell. */
const number = fc
  .oneof(fc.double({ min: -200, max: 200, noNaN: true }), fc.double({ noNaN: true, noDefaultInfinity: true }))
  .map((x) => x + 0);
const anyDeg = number.map(deg);
const anyMs = number.map((x) => ms(Math.abs(x)));
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary);
const orNot = <T>(arbitrary: fc.Arbitrary<T>) =>
  fc.oneof({ weight: 5, arbitrary }, { weight: 1, arbitrary: fc.constant('not-answered' as const) });

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
      reason: maybe(fc.constantFrom('head-still', 'foot-still', 'head-hidden', 'foot-hidden', 'between')),
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

const entry = { id: fc.uuid(), schema: fc.constant(1 as const), origin, at: moment, day };
const place = fc.record({ region: fc.constantFrom(...BODY_REGIONS), side });
const intensity = orNot(whole(0, 10));
const felt = {
  intensity,
  kinds: orNot(fc.subarray([...SYMPTOM_KINDS])),
  places: orNot(fc.array(place, { maxLength: 3 })),
};
const yesNo = orNot(fc.constantFrom('yes' as const, 'no' as const));
const dose: fc.Arbitrary<Dose> = fc.record({ setsADay: whole(1, 20), repsASet: whole(1, 200), holdS: whole(0, 600) });
const finding = fc.oneof(
  fc.record({ side, check: fc.constant('big-toe' as const), found: orNot(fc.constantFrom(...BIG_TOE)) }),
  fc.record({ side, check: fc.constant('heel-walk' as const), found: orNot(whole(0, 10)) }),
  fc.record({ side, check: fc.constant('heel-stand' as const), found: orNot(number.map(Math.abs)) }),
  fc.record({ side, check: fc.constantFrom('foot-slap' as const, 'forefoot-sinks' as const), found: yesNo }),
) as fc.Arbitrary<SelfCheck['findings'][number]>;

/** Entries of every kind but prescriptions, about these sets and lines or about ones that are not there. */
const anyEntry = (
  setId: fc.Arbitrary<string>,
  line: fc.Arbitrary<readonly [prescription: string, item: string]>,
): fc.Arbitrary<DiaryEntry> => {
  const kind = <K extends DiaryEntry['kind']>(name: K) => ({ ...entry, kind: fc.constant(name) });
  const item = maybe(line.map(([, id]) => id));
  return fc.oneof(
    line.chain(([prescriptionId, itemId]) =>
      fc.record({
        ...kind('dose-step'),
        prescriptionId: fc.constant(prescriptionId),
        itemId: fc.constant(itemId),
        direction: fc.constantFrom('up' as const, 'back' as const),
        from: dose,
        to: dose,
        aboutDay: maybe(day),
        reason: typed,
        by: fc.constantFrom('rule' as const, 'patient' as const),
      }),
    ),
    fc.record({
      ...kind('hand-set'),
      exercise: fc.constantFrom(...PRESCRIBED_EXERCISE_IDS),
      side,
      itemId: item,
      reps: whole(0, 200),
      counted: fc.constantFrom('by-hand' as const, 'by-metronome' as const),
    }),
    fc.tuple(setId, line).chain(([set, [prescriptionId, itemId]]) =>
      fc.record({
        ...kind('set-link'),
        setId: fc.constant(set),
        prescriptionId: fc.constant(prescriptionId),
        itemId: fc.constant(itemId),
      }),
    ),
    fc.record({
      ...kind('symptoms'),
      ...felt,
      moment: fc.constantFrom('before-set' as const, 'after-set' as const),
      setId: maybe(setId),
      itemId: item,
    }),
    fc.record({
      ...kind('check-in'),
      ...felt,
      aboutDay: day,
      worst: intensity,
      afterwards: orNot(fc.constantFrom('no-flare' as const, 'settled' as const, 'not-settled' as const)),
      weakness: orNot(fc.constantFrom('as-before' as const, 'worse' as const)),
    }),
    fc.record({
      ...kind('red-flags'),
      answers: fc
        .tuple(...RED_FLAG_IDS.map(() => yesNo))
        .map(
          (answers) =>
            Object.fromEntries(RED_FLAG_IDS.map((id, i) => [id, answers[i]])) as Extract<
              DiaryEntry,
              { readonly kind: 'red-flags' }
            >['answers'],
        ),
    }),
    fc.record({ ...kind('clearance'), note: typed }),
    fc.record({ ...kind('self-check'), findings: fc.array(finding, { maxLength: 8 }) }),
    fc.record({
      ...kind('angle-mark'),
      exercise: fc.constantFrom(...EXERCISE_IDS),
      side,
      mark: fc.constantFrom(...ANGLE_MARKS),
      trial: whole(1, 9),
      angleDeg: anyDeg,
      zero: fc.constantFrom('rest' as const, 'own' as const),
      errorDeg: number.map((x) => deg(Math.abs(x))),
      method: fc.constantFrom('followed' as const, 'landmarks' as const, 'corrected' as const),
      from: fc.constantFrom('camera' as const, 'window' as const, 'file' as const, 'photo' as const),
      foot: maybe(fc.constantFrom(...FOOT_HELD)),
      place: maybe(place),
      sessionId: fc.uuid(),
    }),
    fc.record({
      ...kind('removal'),
      recordId: fc.uuid(),
      of: fc.constantFrom('set' as const, 'hand-set' as const),
      what: maybe(fc.record({ exercise: fc.constantFrom(...EXERCISE_IDS, 'own' as const), side, doneAt: moment })),
    }),
  );
};

/** Somebody's records, whatever they may be: sets, plans, and entries of every kind, some about those sets and lines. Each id once. */
export const anyRecords = fc
  .tuple(
    fc.uniqueArray(anySet, { maxLength: 3, selector: ({ id }) => id }),
    fc.uniqueArray(anyPrescription, { maxLength: 2, selector: ({ id }) => id }),
  )
  .chain(([sets, plans]) => {
    const setId = sets.length > 0 ? fc.oneof(fc.constantFrom(...sets.map(({ id }) => id)), fc.uuid()) : fc.uuid();
    const lines = plans.flatMap(({ id, items }) => items.map((item) => [id, item.id] as const));
    const line =
      lines.length > 0 ? fc.oneof(fc.constantFrom(...lines), fc.tuple(fc.uuid(), fc.uuid())) : fc.tuple(fc.uuid(), fc.uuid());
    return fc
      .uniqueArray(anyEntry(setId, line), { maxLength: 8, selector: ({ id }) => id })
      .map((entries) => ({ sets, diary: [...plans, ...entries] as readonly DiaryEntry[] }));
  });
