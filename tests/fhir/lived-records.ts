import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PRESCRIBED_EXERCISE_IDS } from '../../src/dose/prescribed-exercise.ts';
import type { Prescription } from '../../src/dose/prescription.ts';
import type { SetResult } from '../../src/measure/set-result.ts';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import { measureRecording } from '../../src/record/measure-recording.ts';
import { decodeRecording } from '../../src/record/recording.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { deg, ms } from '../../src/units.ts';
import { line, prescription, step } from '../dose/plan.ts';
import { edit, idOf } from '../record/set-builders.ts';
import { wentWell } from '../record/went-well.ts';
import { angleMark, checkIn, clearance, entry, momentOf, redFlags, report, selfCheck } from '../symptoms/told.ts';

const RECORDINGS = join(import.meta.dirname, '..', '..', 'recordings');

/** What the camera measured of a recorded set. */
export const measured = (file: string): SetResult =>
  measureRecording(wentWell(decodeRecording(readFileSync(join(RECORDINGS, file), 'utf8'))));

const setOf = (n: number, hour: number, result: SetResult, over: Partial<StoredSet> = {}): StoredSet => ({
  id: idOf(n),
  schema: 2,
  startedAt: momentOf(n, hour),
  exercise: result.exercise,
  side: result.side,
  targetReps: 10,
  person: 'me',
  source: 'camera',
  model: 'full',
  state: 'finished',
  reps: result.reps,
  result,
  edits: [],
  ...over,
});

/** Some days of somebody invented: sets of four exercises as they were really measured, one changed by hand, one broken off, and an entry of every kind. */
export function livedRecords(): { readonly sets: readonly StoredSet[]; readonly diary: readonly DiaryEntry[] } {
  const first: Prescription = {
    ...prescription(line('foot-tap', { sides: ['left', 'right'] })),
    by: { role: 'patient', name: '' },
  };
  const plan: Prescription = {
    ...prescription(
      ...PRESCRIBED_EXERCISE_IDS.map((id, i) =>
        line(id, { target: { kind: 'range', fromDeg: deg(10), toDeg: deg(15.5) }, daysAWeek: 2 + i }, i + 1),
      ),
    ),
    at: momentOf(2, 9),
    by: { role: 'therapist', name: 'Wilma Beispiel (invented)' },
    revises: first.id,
    selfChecks: { checks: ['big-toe', 'heel-stand'], sides: ['left', 'right'], everyDays: 7 },
  };
  const [taps, raise] = plan.items;
  if (!taps || !raise) throw new Error('livedRecords requires lines, got none');
  const knee = measured('slr-left-kneebend.json');
  const changed = setOf(4, 10, measured('taps-left-quick.json'));
  const struck = edit({ kind: 'strike', rep: { kind: 'measured', number: 2 } }, changed.id);
  const added = { ...edit({ kind: 'add' }, changed.id), note: 'the camera was late' };
  const sets: readonly StoredSet[] = [
    setOf(3, 9, measured('taps-right-weak.json')),
    { ...changed, edits: [struck, added] },
    setOf(5, 9, { ...knee, onset: { tMs: ms(9000), angleDeg: deg(41.2) } }),
    setOf(6, 9, measured('knee-right-straighten.json'), { state: 'interrupted', result: null }),
  ];
  const link = { kind: 'set-link', prescriptionId: plan.id } as const;
  return {
    sets,
    diary: [
      first,
      plan,
      { ...entry(3, 9), ...link, setId: idOf(3), itemId: taps.id },
      { ...entry(5, 9), ...link, setId: idOf(5), itemId: raise.id },
      report(3, 8, {
        intensity: 3,
        kinds: ['pain', 'tingling'],
        places: [{ region: 'calf-outer', side: 'left' }],
        itemId: taps.id,
      }),
      report(3, 10, { moment: 'after-set', setId: idOf(3), itemId: taps.id, intensity: 'not-answered' }),
      checkIn(4, 7, { worst: 4, afterwards: 'settled', kinds: 'not-answered' }),
      redFlags(4, 8, { 'fever-or-fall': 'yes', 'bladder-bowel': 'not-answered' }),
      { ...clearance(4, 12), note: 'Dr Muster (invented): a cold, go on in two days' },
      selfCheck(5, 8, [
        { side: 'left', check: 'big-toe', found: 'easily-pushed-down' },
        { side: 'right', check: 'heel-walk', found: 9 },
        { side: 'left', check: 'heel-stand', found: 12.5 },
        { side: 'left', check: 'foot-slap', found: 'no' },
        { side: 'right', check: 'forefoot-sinks', found: 'not-answered' },
      ]),
      {
        ...entry(5, 11),
        kind: 'hand-set',
        exercise: 'nerve-glide',
        side: 'left',
        itemId: plan.items[2]?.id ?? null,
        reps: 12,
        counted: 'by-metronome',
      },
      step(plan, taps, 6, { to: { ...taps.start, repsASet: taps.start.repsASet + 2 } }),
      angleMark(6, 12),
      angleMark(6, 13, { mark: 'limit', foot: null, place: null, zero: 'own', method: 'corrected', trial: 2 }),
    ],
  };
}
