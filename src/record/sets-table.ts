import type { HandSet } from '../dose/done-set.ts';
import type { GlideResult } from '../measure/set-result.ts';
import { median } from '../signal/median.ts';
import { type Column, csvOf, degCell, msCell, shareCell } from './csv.ts';
import type { DiaryEntry } from './diary-entry.ts';
import { editedCount, editedReps } from './rep-edit.ts';
import { setEndMs } from './set-end.ts';
import type { StoredSet } from './stored-set.ts';
import { handSetsOf, type TableSet, tableSets } from './table-sets.ts';

/** A set of the table: measured, or counted without the camera. */
type Row = { readonly kind: 'measured'; readonly of: TableSet } | { readonly kind: 'by-hand'; readonly of: HandSet };

/** The complete repetitions that were not struck out by hand: what the medians are made of. */
const countedReps = (set: StoredSet) =>
  editedReps(set).flatMap((each) => (each.kind === 'measured' && !each.struck && each.rep.complete ? [each.rep] : []));

const medianOf = (set: StoredSet, of: (rep: ReturnType<typeof countedReps>[number]) => number | null): number | null =>
  median(countedReps(set).flatMap((rep) => of(rep) ?? []));

/** A cell that only measured sets have. */
const ofMeasured = (name: string, cell: (set: StoredSet, row: TableSet) => ReturnType<Column<Row>['cell']>): Column<Row> => ({
  name,
  cell: (row) => (row.kind === 'measured' ? cell(row.of.set, row.of) : null),
});

/** A cell that only nerve glides have. */
const ofGlide = (name: string, cell: (glide: GlideResult) => ReturnType<Column<Row>['cell']>): Column<Row> =>
  ofMeasured(name, ({ result }) => (result?.glide ? cell(result.glide) : null));

const endOf = (set: StoredSet): string | null => (set.result ? new Date(setEndMs(set)).toISOString() : null);

const count = (set: StoredSet, is: (rep: ReturnType<typeof editedReps>[number]) => boolean): number =>
  editedReps(set).filter(is).length;

/** The columns, see docs/export-format.md. */
const COLUMNS: readonly Column<Row>[] = [
  { name: 'set_id', cell: ({ kind, of }) => (kind === 'measured' ? of.set.id : of.id) },
  { name: 'origin', cell: ({ of }) => of.origin },
  { name: 'day', cell: ({ of }) => of.day },
  ofMeasured('started_at_utc', (set) => set.startedAt),
  { name: 'ended_at_utc', cell: ({ kind, of }) => (kind === 'measured' ? endOf(of.set) : of.at) },
  { name: 'exercise', cell: ({ kind, of }) => (kind === 'measured' ? of.set.exercise : of.exercise) },
  ofMeasured('own_exercise_name', (set) => set.definition?.name ?? null),
  { name: 'side', cell: ({ kind, of }) => (kind === 'measured' ? of.set.side : of.side) },
  { name: 'source', cell: ({ kind, of }) => (kind === 'measured' ? of.set.source : of.counted) },
  ofMeasured('file_name', (set) => set.fileName ?? null),
  ofMeasured('pose_model', (set) => set.model),
  ofMeasured('state', (set) => set.state),
  ofMeasured('prescription_id', (_, { link }) => link?.prescriptionId ?? null),
  { name: 'prescription_line_id', cell: ({ kind, of }) => (kind === 'measured' ? (of.link?.itemId ?? null) : of.itemId) },
  ofMeasured('target_reps', (set) => set.targetReps),
  { name: 'count', cell: ({ kind, of }) => (kind === 'measured' ? editedCount(of.set) : of.reps) },
  ofMeasured('measured_count', ({ reps }) => reps.filter((rep) => rep.complete).length),
  ofMeasured('partial_count', (set) => count(set, (each) => each.kind === 'measured' && !each.rep.complete && !each.struck)),
  ofMeasured('struck_by_hand', (set) => count(set, (each) => each.struck)),
  ofMeasured('added_by_hand', (set) => count(set, (each) => each.kind === 'added' && !each.struck)),
  ofMeasured('median_range_deg', (set) => degCell(medianOf(set, (rep) => rep.rangeDeg))),
  ofMeasured('range_uncertainty_95_deg', (set) => degCell(medianOf(set, (rep) => rep.uncertaintyDeg))),
  ofMeasured('median_peak_deg', (set) => degCell(medianOf(set, (rep) => rep.peakDeg))),
  ofMeasured('median_hold_ms', (set) => msCell(medianOf(set, (rep) => rep.holdMs))),
  ofMeasured('median_up_ms', (set) => msCell(medianOf(set, (rep) => rep.upMs))),
  ofMeasured('duration_ms', ({ result }) => msCell(result?.durationMs)),
  ofMeasured('onset_ms', ({ result }) => msCell(result?.onset?.tMs)),
  ofMeasured('onset_deg', ({ result }) => degCell(result?.onset?.angleDeg)),
  ofGlide('glide_pattern', ({ pattern }) => pattern),
  ofGlide('glide_cycles', ({ cycles }) => cycles.length),
  ofGlide('glide_slides', ({ cycles }) => cycles.filter(({ pattern }) => pattern === 'slide').length),
  ofGlide('glide_slide_share', ({ slideShare }) => shareCell(slideShare)),
  ofGlide('glide_foot_range_deg', ({ footRangeDeg }) => degCell(footRangeDeg)),
  ofGlide('glide_head_range_deg', ({ headRangeDeg }) => degCell(headRangeDeg)),
  ofGlide('glide_head_range_uncertainty_95_deg', ({ headUncertaintyDeg }) => degCell(headUncertaintyDeg)),
  ofGlide('leg_held_deg', ({ legHeld }) => degCell(legHeld?.medianDeg)),
  ofGlide('leg_held_uncertainty_95_deg', ({ legHeld }) => degCell(legHeld?.uncertaintyDeg)),
  ofGlide('leg_highest_deg', ({ legHeld }) => degCell(legHeld?.highestDeg)),
  ofGlide('leg_limit_deg', ({ legHeld }) => degCell(legHeld?.limitDeg)),
  ofGlide('leg_limit_from', ({ legHeld }) => legHeld?.limitFrom ?? null),
  ofGlide('ended_early', ({ stopped }) => stopped),
  ofMeasured('knee_limit_deg', ({ result }) => degCell(result?.kneeLimitDeg)),
  ofMeasured('camera_turn_deg', ({ result }) => degCell(result?.quality.cameraTurnDeg)),
  ofMeasured('picture_width_px', ({ result }) => result?.size.width ?? null),
  ofMeasured('picture_height_px', ({ result }) => result?.size.height ?? null),
  ofMeasured('frames', ({ result }) => result?.frames ?? null),
  ofMeasured('frames_used', ({ result }) => result?.framesUsed ?? null),
  ofMeasured('warnings', ({ result }) => (result ? result.quality.warnings.join(' ') : null)),
];

/**
 * Every set as a row of CSV: the measured ones, oldest first, then those counted by hand or by a beat. Counts and medians are those after changes by hand.
 * @param timeZone IANA name; on which day a measured set was done when no link says so
 */
export const setsTable = (sets: readonly StoredSet[], diary: readonly DiaryEntry[], timeZone: string): string =>
  csvOf(COLUMNS, [
    ...tableSets(sets, diary, timeZone).map((of): Row => ({ kind: 'measured', of })),
    ...handSetsOf(diary).map((of): Row => ({ kind: 'by-hand', of })),
  ]);
