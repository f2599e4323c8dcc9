import type { MeasuredRep } from '../measure/set-result.ts';
import type { GlideCycle } from '../reps/glide-coordination.ts';
import { type Column, csvOf, degCell, msCell, shareCell } from './csv.ts';
import { cycleOfRep } from './cycle-of-rep.ts';
import type { DiaryEntry } from './diary-entry.ts';
import { type EditedRep, editedReps } from './rep-edit.ts';
import type { StoredSet } from './stored-set.ts';
import { type TableSet, tableSets } from './table-sets.ts';

interface Row extends TableSet {
  readonly rep: EditedRep;
}

/** A cell that only measured repetitions have, not those added by hand. */
const ofMeasured = (name: string, cell: (rep: MeasuredRep) => ReturnType<Column<Row>['cell']>): Column<Row> => ({
  name,
  cell: ({ rep }) => (rep.kind === 'measured' ? cell(rep.rep) : null),
});

/** A cell that only a repetition has that is a cycle of a nerve glide. */
const ofCycle = (name: string, cell: (cycle: GlideCycle) => ReturnType<Column<Row>['cell']>): Column<Row> => ({
  name,
  cell: ({ set, rep }) => {
    const cycle = rep.kind === 'measured' ? cycleOfRep(rep.rep, set.result?.glide?.cycles ?? []) : null;
    return cycle && cell(cycle);
  },
});

/** The columns, see docs/export-format.md. */
const COLUMNS: readonly Column<Row>[] = [
  { name: 'set_id', cell: ({ set }) => set.id },
  { name: 'origin', cell: ({ origin }) => origin },
  { name: 'day', cell: ({ day }) => day },
  { name: 'set_started_at_utc', cell: ({ set }) => set.startedAt },
  { name: 'exercise', cell: ({ set }) => set.exercise },
  { name: 'own_exercise_name', cell: ({ set }) => set.definition?.name ?? null },
  { name: 'side', cell: ({ set }) => set.side },
  { name: 'source', cell: ({ set }) => set.source },
  { name: 'pose_model', cell: ({ set }) => set.model },
  { name: 'rep_kind', cell: ({ rep }) => rep.kind },
  ofMeasured('rep_number', (rep) => rep.number),
  ofMeasured('complete', (rep) => rep.complete),
  { name: 'struck_by_hand', cell: ({ rep }) => rep.struck },
  { name: 'counted', cell: ({ rep }) => !rep.struck && (rep.kind === 'added' || rep.rep.complete) },
  ofMeasured('start_ms', (rep) => msCell(rep.startMs)),
  ofMeasured('peak_ms', (rep) => msCell(rep.peakMs)),
  ofMeasured('end_ms', (rep) => msCell(rep.endMs)),
  ofMeasured('start_deg', (rep) => degCell(rep.startDeg)),
  ofMeasured('peak_deg', (rep) => degCell(rep.peakDeg)),
  ofMeasured('range_deg', (rep) => degCell(rep.rangeDeg)),
  ofMeasured('range_uncertainty_95_deg', (rep) => degCell(rep.uncertaintyDeg)),
  ofMeasured('hold_ms', (rep) => msCell(rep.holdMs)),
  ofMeasured('foot_deg', (rep) => degCell(rep.footDeg)),
  ofMeasured('foot_uncertainty_95_deg', (rep) => degCell(rep.footUncertaintyDeg)),
  ofMeasured('up_ms', (rep) => msCell(rep.upMs)),
  ofMeasured('sank_after_ms', (rep) => msCell(rep.sankAfterMs)),
  ofCycle('glide_pattern', ({ pattern }) => pattern),
  ofCycle('glide_unclear_because', ({ reason }) => reason),
  ofCycle('glide_phase_deg', ({ phaseDeg }) => degCell(phaseDeg)),
  ofCycle('glide_certainty', ({ phaseDeg, certainty }) => (phaseDeg === null ? null : shareCell(certainty))),
  ofCycle('glide_head_range_deg', ({ headRangeDeg }) => degCell(headRangeDeg)),
  ofMeasured('angle_source', (rep) => rep.source),
  ofMeasured('flags', (rep) => rep.flags.join(' ')),
  { name: 'added_at_utc', cell: ({ rep }) => (rep.kind === 'added' ? rep.at : null) },
  { name: 'note', cell: ({ rep }) => (rep.kind === 'added' ? rep.note : null) },
];

/**
 * Every repetition of every measured set as a row of CSV, oldest set first: as measured, complete or partial, struck out or not, then those added by hand.
 * @param timeZone IANA name; on which day a set was done when no link says so
 */
export const repsTable = (sets: readonly StoredSet[], diary: readonly DiaryEntry[], timeZone: string): string =>
  csvOf(
    COLUMNS,
    tableSets(sets, diary, timeZone).flatMap((of) => editedReps(of.set).map((rep): Row => ({ ...of, rep }))),
  );
