import type { DiaryEntry } from '../record/diary-entry.ts';
import type { RepEdit } from '../record/rep-edit.ts';
import type { StoredSet } from '../record/stored-set.ts';

/** A change of meaning of a field is a new version. */
export const ENVELOPE_VERSION = 1;

/** A record as it travels, whole. None of them ever changes: a set's changes by hand are records of their own. */
export type TravellingRecord =
  | { readonly kind: 'set'; readonly set: StoredSet }
  /** `place`: which change of its set it was where it was sent from, from 0; what order they hold in is said by their moments and ids alone. */
  | { readonly kind: 'edit'; readonly edit: RepEdit; readonly place: number }
  | { readonly kind: 'entry'; readonly entry: DiaryEntry };

export const idOfRecord = (record: TravellingRecord): string => {
  if (record.kind === 'set') return record.set.id;
  return record.kind === 'edit' ? record.edit.id : record.entry.id;
};

/** The records of a set: itself without its changes, then each change. */
export const recordsOfSet = (set: StoredSet): readonly TravellingRecord[] => [
  { kind: 'set', set: { ...set, edits: [] } },
  ...set.edits.map((edit, place): TravellingRecord => ({ kind: 'edit', edit, place })),
];

/** The text of a record. Repetitions stand in a set once: its own are those of its result, but for sets that broke off. */
export function envelopeText(record: TravellingRecord): string {
  const head = { evenside: 'record', version: ENVELOPE_VERSION };
  if (record.kind !== 'set') return JSON.stringify({ ...head, ...record });
  const { edits: _, reps, ...set } = record.set;
  const isTwice = JSON.stringify(reps) === JSON.stringify(set.result?.reps);
  return JSON.stringify({ ...head, kind: 'set', set: isTwice ? set : { ...set, reps } });
}
