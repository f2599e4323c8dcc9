import { startingDose } from '../../src/dose/starting-doses.ts';
import type { ExerciseId } from '../../src/exercises/exercise.ts';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import { newId } from '../../src/record/new-id.ts';
import { SELF_CHECK_IDS, type SelfCheckFinding } from '../../src/symptoms/self-check.ts';
import { deg } from '../../src/units.ts';
import { aGlide, aLegHeld } from '../record/glide-builders.ts';
import { header, rep, result } from '../record/set-builders.ts';
import { ALL_NO, daysAgo } from '../screens/diary-builder.ts';

/** Those that take most room in a report: of glides more is told than of any other. */
const FOUR: readonly ExerciseId[] = ['foot-tap', 'leg-raise', 'nerve-glide', 'knee-straighten'];

const SIDES = ['left', 'right'] as const;

/** What a check of strength finds, a little better each time. */
function foundBy(check: (typeof SELF_CHECK_IDS)[number], time: number): SelfCheckFinding {
  if (check === 'big-toe') return { check, found: time === 0 ? 'easily-pushed-down' : 'as-strong' };
  if (check === 'heel-walk') return { check, found: 6 + time };
  if (check === 'heel-stand') return { check, found: 8 + time };
  return { check, found: time === 0 ? 'yes' : 'no' };
}

/** Glides with something of everything, ended early every other day. */
const glideOf = (ago: number) =>
  aGlide('SSTSb', { legHeld: aLegHeld({ highestDeg: deg(56) }), stopped: ago % 2 === 0 ? 'symptoms' : null });

/**
 * Rows of the database with as much as four lines can have in the days before today: every line measured on both legs each day, symptoms and a check-in each
 * day, every check of strength twice, a warning sign that was cleared, a step of each line's dose, and leg raises marked on both legs.
 */
export function fullDiary(days: number, { parted = false, exercises = FOUR } = {}) {
  const items = exercises
    .flatMap((id) => (parted ? SIDES.map((side) => startingDose(id, newId(), [side])) : [startingDose(id, newId(), SIDES)]))
    .map((item) => ({
      ...item,
      target: { kind: 'range' as const, fromDeg: deg(12), toDeg: deg(18) },
      basis: 'therapist' as const,
    }));
  const prescriptionId = newId();
  const markSession = newId();
  const back = Array.from({ length: days }, (_, i) => days - i);
  const measured = back.flatMap((ago) =>
    items.flatMap((item) =>
      item.sides.map((side) => {
        const range = 10 + (days - ago) / days + (side === 'right' ? 6 : 0);
        const reps = [1, 2, 3, 4, 5].map((n) => rep(n, { rangeDeg: deg(range + 0.2 * n) }));
        const head = header({ id: newId(), startedAt: daysAgo(ago).at, exercise: item.exercise as ExerciseId, side });
        const glide = item.exercise === 'nerve-glide' ? glideOf(ago) : null;
        return { ago, item, head, result: { ...result(reps), exercise: head.exercise, side, glide } };
      }),
    ),
  );
  const diary: readonly DiaryEntry[] = [
    {
      ...daysAgo(days),
      id: prescriptionId,
      origin: 'example',
      kind: 'prescription',
      by: { role: 'therapist', name: 'Wilma Beispiel (invented)' },
      revises: null,
      items,
      selfChecks: { checks: [...SELF_CHECK_IDS], sides: [...SIDES], everyDays: 7 },
    },
    ...measured.map(
      ({ ago, item, head }): DiaryEntry => ({
        ...daysAgo(ago),
        origin: 'example',
        kind: 'set-link',
        setId: head.id,
        prescriptionId,
        itemId: item.id,
      }),
    ),
    ...measured
      .filter(({ item }) => item.exercise === 'nerve-glide')
      .map(
        ({ ago, item, head }): DiaryEntry => ({
          ...daysAgo(ago - 1 / 1440),
          day: daysAgo(ago).day,
          kind: 'symptoms',
          moment: 'after-set',
          setId: head.id,
          itemId: item.id,
          intensity: 4,
          kinds: ['tingling'],
          places: [{ region: 'calf-outer', side: 'left' }],
        }),
      ),
    ...back.flatMap((ago): readonly DiaryEntry[] => [
      {
        ...daysAgo(ago),
        kind: 'symptoms',
        moment: 'before-set',
        setId: null,
        itemId: null,
        intensity: 3,
        kinds: ['tingling'],
        places: [{ region: 'calf-outer', side: 'left' }],
      },
      {
        ...daysAgo(ago - 1),
        kind: 'check-in',
        aboutDay: daysAgo(ago).day,
        intensity: 4,
        kinds: ['tingling'],
        places: [{ region: 'thigh-outer', side: 'left' }],
        worst: 5,
        afterwards: ago % 5 === 0 ? 'not-settled' : 'settled',
        weakness: 'as-before',
      },
      { ...daysAgo(ago), kind: 'red-flags', answers: ago === 9 ? { ...ALL_NO, 'fever-or-fall': 'yes' } : ALL_NO },
    ]),
    { ...daysAgo(8), kind: 'clearance', note: 'Dr Muster (invented): a cold, go on in two days' },
    ...[12, 3].map(
      (ago, time): DiaryEntry => ({
        ...daysAgo(ago),
        kind: 'self-check',
        findings: SELF_CHECK_IDS.flatMap((check) => SIDES.map((side) => ({ ...foundBy(check, time), side }))),
      }),
    ),
    ...items.map(
      (item, i): DiaryEntry => ({
        ...daysAgo(Math.max(1, 6 - i)),
        kind: 'dose-step',
        prescriptionId,
        itemId: item.id,
        direction: 'back',
        from: item.start,
        to: { ...item.start, repsASet: item.start.repsASet - 1 },
        aboutDay: daysAgo(Math.max(2, 7 - i)).day,
        reason: 'clear-rise',
        by: i === 0 ? 'patient' : 'rule',
      }),
    ),
    ...SIDES.flatMap((side) =>
      (['first-symptom', 'limit'] as const).flatMap((mark) =>
        [1, 2, 3].map(
          (trial): DiaryEntry => ({
            ...daysAgo(2),
            kind: 'angle-mark',
            exercise: 'leg-raise',
            side,
            mark,
            trial,
            angleDeg: deg((mark === 'limit' ? 60 : 42) + trial + (side === 'left' ? 0 : 9)),
            zero: 'rest',
            errorDeg: deg(3),
            method: trial === 3 ? 'corrected' : 'followed',
            from: 'window',
            foot: 'relaxed',
            place: { region: 'calf-back', side },
            sessionId: markSession,
          }),
        ),
      ),
    ),
  ];
  return {
    diary,
    sets: measured.map(({ head }) => ({ ...head, state: 'finished' })),
    results: measured.map(({ head, result: found }) => ({ setId: head.id, result: found })),
  };
}
