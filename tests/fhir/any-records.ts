import fc from 'fast-check';
import type { Dose } from '../../src/dose/dose.ts';
import { PRESCRIBED_EXERCISE_IDS } from '../../src/dose/prescribed-exercise.ts';
import { EXERCISE_IDS } from '../../src/exercises/exercise.ts';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import { ANGLE_MARKS, FOOT_HELD } from '../../src/symptoms/angle-mark.ts';
import { SYMPTOM_KINDS } from '../../src/symptoms/felt.ts';
import { BODY_REGIONS } from '../../src/symptoms/place.ts';
import { RED_FLAG_IDS } from '../../src/symptoms/red-flags.ts';
import { BIG_TOE, type SelfCheck } from '../../src/symptoms/self-check.ts';
import { deg } from '../../src/units.ts';
import { anyPrescription } from '../record/any-prescription.ts';
import { anySet } from './any-stored-set.ts';
import { anyDeg, day, maybe, moment, number, origin, orNot, side, typed, whole } from './any-value.ts';

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
