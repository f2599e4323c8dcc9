import Papa from 'papaparse';
import { expect, test } from 'vitest';
import type { SetLink } from '../../src/dose/done-set.ts';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import { repsTable } from '../../src/record/reps-table.ts';
import { setsTable } from '../../src/record/sets-table.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { deg, ms } from '../../src/units.ts';
import { entry } from '../symptoms/told.ts';
import { aGlide, aLegHeld } from './glide-builders.ts';
import { edit, header, idOf, momentOf, rep, result } from './set-builders.ts';

/** The cells of a table by the name of their column. */
function rowsOf(csv: string): readonly Readonly<Record<string, string>>[] {
  const { data, errors } = Papa.parse<Record<string, string>>(csv, { header: true, delimiter: ',', newline: '\r\n' });
  expect(errors).toEqual([]);
  return data;
}

const stored = (over: Partial<StoredSet> = {}): StoredSet => {
  const reps = over.reps ?? [rep(1), rep(2)];
  return { ...header(), state: 'finished', reps, result: result(reps), edits: [], ...over };
};
const link = (setId: string, over: Partial<SetLink> = {}): SetLink => ({
  ...entry(3, 9),
  kind: 'set-link',
  setId,
  prescriptionId: idOf(70),
  itemId: idOf(71),
  ...over,
});

test('a measured set is one row, its numbers after the changes by hand, the measured count beside them', () => {
  const reps = [
    rep(1, { rangeDeg: deg(10) }),
    rep(2, { rangeDeg: deg(12) }),
    rep(3, { rangeDeg: deg(40) }),
    rep(4, { complete: false, flags: ['partial'] }),
  ];
  const edits = [edit({ kind: 'strike', rep: { kind: 'measured', number: 3 } }), edit({ kind: 'add' })];
  const [row] = rowsOf(setsTable([stored({ reps, edits })], [], 'UTC'));
  expect(row).toMatchObject({
    set_id: idOf(1),
    origin: 'own',
    day: '2026-03-01',
    started_at_utc: momentOf(0),
    exercise: 'foot-tap',
    side: 'left',
    source: 'camera',
    pose_model: 'full',
    state: 'finished',
    target_reps: '10',
    count: '3',
    measured_count: '3',
    partial_count: '1',
    struck_by_hand: '1',
    added_by_hand: '1',
    median_range_deg: '11',
    range_uncertainty_95_deg: '1.1',
    median_peak_deg: '16',
    median_hold_ms: '210',
    median_up_ms: '',
    duration_ms: '67',
    frames: '3',
    frames_used: '2',
    warnings: 'low-frame-rate',
    prescription_line_id: '',
  });
});

test('a set without a result has no numbers of it, and no zeros instead', () => {
  const [row] = rowsOf(setsTable([stored({ result: null, reps: [], state: 'interrupted' })], [], 'UTC'));
  expect(row).toMatchObject({ count: '0', median_range_deg: '', duration_ms: '', ended_at_utc: '', frames: '', warnings: '' });
});

test('the link tells line and day; else the day is that of the time zone', () => {
  const late = stored({ startedAt: '2026-03-01T23:30:00.000Z' });
  expect(rowsOf(setsTable([late], [], 'Europe/Madrid'))[0]?.day).toBe('2026-03-02');
  expect(rowsOf(setsTable([late], [link(late.id)], 'Europe/Madrid'))[0]).toMatchObject({
    day: '2026-05-03',
    prescription_id: idOf(70),
    prescription_line_id: idOf(71),
  });
});

test('sets counted without the camera stand among them, without measured numbers', () => {
  const hand: DiaryEntry = {
    ...entry(2, 14),
    kind: 'hand-set',
    exercise: 'nerve-glide',
    side: 'right',
    itemId: null,
    reps: 12,
    counted: 'by-metronome',
  };
  const rows = rowsOf(setsTable([stored()], [hand], 'UTC'));
  expect(rows).toHaveLength(2);
  expect(rows[1]).toMatchObject({
    set_id: hand.id,
    source: 'by-metronome',
    exercise: 'nerve-glide',
    side: 'right',
    count: '12',
    ended_at_utc: hand.at,
    started_at_utc: '',
    median_range_deg: '',
  });
});

test('what is invented says so: the recorded example, what an invented link names, invented entries', () => {
  const sets = [stored({ source: 'example' }), stored({ id: idOf(2) }), stored({ id: idOf(3) })];
  const diary = [link(idOf(2), { origin: 'example' })];
  expect(rowsOf(setsTable(sets, diary, 'UTC')).map(({ origin }) => origin)).toEqual(['example', 'example', 'own']);
  expect(new Set(rowsOf(repsTable(sets.slice(0, 2), diary, 'UTC')).map(({ origin }) => origin))).toEqual(new Set(['example']));
});

test('a name that would be a formula, or holds commas, quotes and line breaks, stays a text', () => {
  const names = ['=cmd|"/c calc"!A1', 'film, "left".mp4', 'two\r\nlines.mp4'];
  const sets = names.map((fileName, i) => stored({ id: idOf(i), startedAt: momentOf(i), source: 'file', fileName }));
  expect(rowsOf(setsTable(sets, [], 'UTC')).map(({ file_name }) => file_name)).toEqual([`'${names[0]}`, names[1], names[2]]);
});

test('each repetition is a row, struck ones and those added by hand too; a negative angle stays a number', () => {
  const reps = [
    rep(1, { startDeg: deg(-3.456), footDeg: deg(-8), footUncertaintyDeg: deg(12), flags: ['knee-bent', 'past-onset'] }),
    rep(2, { upMs: ms(5400.4), sankAfterMs: ms(4000) }),
  ];
  const edits = [edit({ kind: 'strike', rep: { kind: 'measured', number: 2 } }), { ...edit({ kind: 'add' }), note: '-missed' }];
  const csv = repsTable([stored({ reps, edits })], [], 'UTC');
  expect(csv).toContain(',-3.46,');
  const rows = rowsOf(csv);
  expect(rows).toHaveLength(3);
  expect(rows[0]).toMatchObject({
    rep_kind: 'measured',
    rep_number: '1',
    counted: 'true',
    start_deg: '-3.46',
    peak_deg: '16',
    range_deg: '14.75',
    range_uncertainty_95_deg: '1.1',
    hold_ms: '210',
    foot_deg: '-8',
    foot_uncertainty_95_deg: '12',
    flags: 'knee-bent past-onset',
    angle_source: 'fused',
    up_ms: '',
  });
  expect(rows[1]).toMatchObject({
    counted: 'false',
    struck_by_hand: 'true',
    up_ms: '5400',
    sank_after_ms: '4000',
    peak_ms: '4601',
  });
  expect(rows[2]).toMatchObject({ rep_kind: 'added', rep_number: '', counted: 'true', range_deg: '', note: "'-missed" });
});

const glides = (cycles: string, reps = [...cycles].map((_, i) => rep(i + 1)), change = {}): StoredSet =>
  stored({ exercise: 'nerve-glide', reps, result: { ...result(reps), exercise: 'nerve-glide', glide: aGlide(cycles, change) } });

test('a set of nerve glides has its cycles, ranges, leg and early end; other sets have empty cells there', () => {
  const change = { legHeld: aLegHeld({ limitFrom: 'held', highestDeg: deg(53.456) }), stopped: 'above-limit' };
  const [row, other] = rowsOf(setsTable([glides('SST', undefined, change), stored({ startedAt: momentOf(9) })], [], 'UTC'));
  const columns = {
    glide_pattern: 'unclear',
    glide_cycles: '3',
    glide_slides: '2',
    glide_slide_share: '0.667',
    glide_foot_range_deg: '31',
    glide_head_range_deg: '26',
    glide_head_range_uncertainty_95_deg: '4',
    leg_held_deg: '42',
    leg_held_uncertainty_95_deg: '3',
    leg_highest_deg: '53.46',
    leg_limit_deg: '50',
    leg_limit_from: 'held',
    ended_early: 'above-limit',
  };
  expect(row).toMatchObject(columns);
  expect(other).toMatchObject(Object.fromEntries(Object.keys(columns).map((name) => [name, ''])));
});

test('a leg that was not seen and a set without a cycle leave empty cells, no zeros', () => {
  const change = { footRangeDeg: null, headRangeDeg: null, headUncertaintyDeg: null, legHeld: null };
  expect(rowsOf(setsTable([glides('', [rep(1)], change)], [], 'UTC'))[0]).toMatchObject({
    glide_cycles: '0',
    glide_slide_share: '',
    glide_foot_range_deg: '',
    leg_held_deg: '',
    leg_limit_from: '',
    ended_early: '',
  });
});

test('a repetition has the pattern of the cycle that it is; one without a cycle, and of other exercises, has none', () => {
  const rows = rowsOf(repsTable([glides('STh', [rep(1), rep(2), rep(3), rep(7)])], [], 'UTC'));
  expect(rows.map((row) => [row.glide_pattern, row.glide_phase_deg, row.glide_certainty, row.glide_unclear_because])).toEqual([
    ['slide', '12', '0.998', ''],
    ['tension', '-171', '0.998', ''],
    ['unclear', '', '', 'head-hidden'],
    ['', '', '', ''],
  ]);
  expect(rows.map(({ glide_head_range_deg }) => glide_head_range_deg)).toEqual(['26', '26', '26', '']);
  expect(rowsOf(repsTable([stored()], [], 'UTC'))[0]).toMatchObject({ glide_pattern: '', glide_certainty: '' });
});

test('sets come oldest first, whatever order they are given in', () => {
  const sets = [stored({ id: idOf(2), startedAt: momentOf(9) }), stored({ id: idOf(1), startedAt: momentOf(3) })];
  expect(rowsOf(setsTable(sets, [], 'UTC')).map(({ set_id }) => set_id)).toEqual([idOf(1), idOf(2)]);
});

test('every name of a column is one of its own, and every measured number of an angle or a time names its unit', () => {
  for (const csv of [setsTable([], [], 'UTC'), repsTable([], [], 'UTC')]) {
    const names = csv.split(',');
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name).toMatch(/^[a-z0-9_]+$/);
    for (const name of names.filter(
      (each) =>
        /range|peak_|hold|foot|onset|turn|duration|up_|sank|limit|held|highest|phase/.test(each) && !each.endsWith('_from'),
    ))
      expect(name).toMatch(/_(deg|ms)$/);
  }
});
