import type { Table } from 'dexie';
import { removedIds } from '../../dose/removal.ts';
import type { Database, DiaryRow, EditRow, SetRow } from '../database.ts';
import type { DiaryEntry } from '../diary-entry.ts';
import { diaryEntryShape } from '../diary-shape.ts';
import type { PersonId } from '../person.ts';
import { wholeSets } from '../read-sets.ts';
import type { RepEdit } from '../rep-edit.ts';
import { shaped } from '../shape.ts';
import { type FileSet, fileSetOf } from './file-set.ts';
import type { RecordFile } from './read-record.ts';
import type { Brought } from './record-store.ts';
import { removedHere, removedIn } from './removed-here.ts';
import { sameEntry } from './same-entry.ts';
import { arrived, setUnion } from './set-union.ts';

/** Rows that are asked for at once. Chosen: some sets with their curves are a few megabytes. */
const AT_ONCE = 100;

function* slices<T>(all: readonly T[]): Iterable<readonly T[]> {
  for (let i = 0; i < all.length; i += AT_ONCE) yield all.slice(i, i + AT_ONCE);
}

/** What is here already under the ids of a record, whosever it is. */
export interface HereAlready {
  readonly sets: readonly SetRow[];
  readonly diary: readonly DiaryRow[];
}

/** A table is asked for all its keys as long as it has no more than so many times as many as are looked for: one answer instead of one each. Chosen. */
const KEYS_EACH = 10;

async function rowsAmong<T>(table: Table<T, string>, ids: readonly string[]): Promise<readonly T[]> {
  const isSmall = (await table.count()) <= KEYS_EACH * ids.length;
  const here = isSmall ? new Set(await table.toCollection().primaryKeys()) : null;
  const rows: T[] = [];
  for (const some of slices(here ? ids.filter((id) => here.has(id)) : ids)) {
    for (const row of await table.bulkGet([...some])) if (row) rows.push(row);
  }
  return rows;
}

/** Runs in the transaction of its caller. */
export const hereAlready = async (db: Database, { setIds, diary }: RecordFile): Promise<HereAlready> => ({
  sets: await rowsAmong(db.sets, setIds),
  diary: await rowsAmong(
    db.diary,
    diary.map(({ id }) => id),
  ),
});

/** Somebody else with whom something of a record is here already, and how much of it. */
export function elsewhere(
  { sets, diary }: HereAlready,
  person: PersonId | null,
): { readonly person: PersonId; readonly count: number } | null {
  const others = [...sets, ...diary].filter((row) => row.person !== person);
  return others[0] ? { person: others[0].person, count: others.length } : null;
}

/** A copy, since the database writes the number of the order into what it is given. */
const editRows = (edits: readonly RepEdit[]): EditRow[] => edits.map((edit) => ({ ...edit }));

/** Writes what a set has become. @param before as it was here; null: it was not */
async function writeUnion(db: Database, person: PersonId, before: FileSet | null, set: FileSet): Promise<void> {
  const { reps, result, edits, ...head } = set;
  await db.sets.put({ ...head, person });
  if (result && !before?.result) await db.results.put({ setId: set.id, result });
  if (!result) await db.reps.bulkPut(reps.map((rep) => ({ setId: set.id, number: rep.number, rep })));
  if (!before) return;
  const known = new Set(before.edits.map(({ id }) => id));
  await db.edits.bulkAdd(editRows(edits.filter(({ id }) => !known.has(id))));
}

interface Tally {
  sets: { fresh: number; grown: number; same: number };
  entries: { fresh: number; same: number };
  conflicts: number;
  removed: { here: number; coming: number };
}

/** Some new sets, in few calls. */
async function writeFresh(db: Database, person: PersonId, sets: readonly FileSet[]): Promise<void> {
  const reps = sets.flatMap(({ id, reps }) => reps.map((rep) => ({ setId: id, number: rep.number, rep })));
  const edits = editRows(sets.flatMap((set) => set.edits));
  await Promise.all([
    db.sets.bulkAdd(sets.map(({ reps: _, result: __, edits: ___, ...head }) => ({ ...head, person }))),
    db.results.bulkAdd(sets.flatMap(({ id, result }) => (result ? [{ setId: id, result }] : []))),
    ...(reps.length > 0 ? [db.reps.bulkAdd(reps)] : []),
    ...(edits.length > 0 ? [db.edits.bulkAdd(edits)] : []),
  ]);
}

/** Without the changes by hand whose ids stand here with another set. */
async function withOwnEdits(db: Database, sets: readonly FileSet[], tally: Tally): Promise<readonly FileSet[]> {
  const ids = sets.flatMap(({ edits }) => edits.map(({ id }) => id));
  if (ids.length === 0) return sets;
  const setOf = new Map((await db.edits.where('id').anyOf(ids).toArray()).map(({ id, setId }) => [id, setId]));
  return sets.map((set) => {
    const edits = set.edits.filter(({ id }) => (setOf.get(id) ?? set.id) === set.id);
    tally.conflicts += set.edits.length - edits.length;
    return edits.length === set.edits.length ? set : { ...set, edits };
  });
}

/** @param known ids of sets that are here @returns the new ones, still to be written */
async function joinSets(
  db: Database,
  person: PersonId | null,
  coming: readonly FileSet[],
  known: ReadonlySet<string>,
  write: boolean,
  tally: Tally,
): Promise<readonly FileSet[]> {
  const ids = coming.map(({ id }) => id).filter((id) => known.has(id));
  const rows = ids.length === 0 ? [] : (await db.sets.bulkGet(ids)).filter((row) => row !== undefined);
  const found = rows.length === 0 ? [] : await wholeSets(db, rows);
  const here = new Map(found.map((set, i) => [rows[i]?.id ?? '', set]));
  const fresh: FileSet[] = [];
  for (const set of await withOwnEdits(db, coming.map(arrived), tally)) {
    const there = here.get(set.id);
    if (!there) fresh.push(set);
    // What is here and can't be read is left alone.
    else if (!there.ok) tally.conflicts += 1;
    else {
      const before = fileSetOf(there.value);
      const union = setUnion(before, set);
      tally.conflicts += union.kind === 'conflict' ? 1 : union.editConflicts;
      if (union.kind === 'conflict') continue;
      tally.sets[union.kind] += 1;
      if (union.kind === 'grown' && write && person !== null) await writeUnion(db, person, before, union.set);
    }
  }
  tally.sets.fresh += fresh.length;
  return fresh;
}

/** Told of the share of the sets that is written. */
export type OnProgress = (share: number) => void;

/** How the sets of a record are joined: with which that are here, and whether that is written or only told. */
interface Joining {
  readonly person: PersonId | null;
  readonly known: ReadonlySet<string>;
  readonly staying: (sets: readonly FileSet[]) => readonly FileSet[];
  readonly onProgress: OnProgress | null;
}

/**
 * The sets of a record, some at a time. While the database writes some, the next are unpacked. Each write is waited for before the next: Dexie takes a
 * transaction that nobody waits in for one that is over.
 */
async function joinAllSets(
  db: Database,
  parts: Iterable<readonly FileSet[]>,
  count: number,
  { person, known, staying, onProgress }: Joining,
  tally: Tally,
): Promise<void> {
  const write = onProgress !== null;
  let done = 0;
  let writing: Promise<void> = Promise.resolve();
  for (const part of parts) {
    for (const sets of slices(staying(part))) {
      await writing;
      const fresh = await joinSets(db, person, sets, known, write, tally);
      if (!write || person === null || fresh.length === 0) continue;
      writing = writeFresh(db, person, fresh);
      // Should the next part throw before this is waited for.
      writing.catch(() => undefined);
    }
    done += part.length;
    onProgress?.(done / count);
  }
  await writing;
}

const withoutPerson = ({ person: _, ...entry }: DiaryEntry & { readonly person: PersonId }): unknown => entry;

async function joinEntries(db: Database, person: PersonId | null, coming: readonly DiaryEntry[], write: boolean, tally: Tally) {
  const rows = await db.diary.bulkGet(coming.map(({ id }) => id));
  const fresh = coming.filter((entry, i) => {
    const row = rows[i];
    if (!row) return true;
    const there = shaped<DiaryEntry>(diaryEntryShape, withoutPerson(row));
    if (there.ok && sameEntry(there.value, entry)) tally.entries.same += 1;
    else tally.conflicts += 1;
    return false;
  });
  tally.entries.fresh += fresh.length;
  if (write && person !== null) await db.diary.bulkAdd(fresh.map((entry) => ({ ...entry, person })));
}

/**
 * Joins a record with what is here of one person. Runs in the transaction of its caller; nothing of it is somebody else's.
 * @param person null: somebody of whom nothing is here
 * @param here what `hereAlready` found in this transaction
 * @param onProgress null: nothing is written, it is only told what would come of it
 */
export async function joined(
  db: Database,
  person: PersonId | null,
  record: RecordFile,
  here: HereAlready,
  onProgress: OnProgress | null,
): Promise<Brought> {
  const write = onProgress !== null;
  const tally: Tally = {
    sets: { fresh: 0, grown: 0, same: 0 },
    entries: { fresh: 0, same: 0 },
    conflicts: 0,
    removed: { here: 0, coming: 0 },
  };
  const coming = removedIds(record.diary);
  const gone = new Set([...(person === null ? [] : await removedIn(db, person)), ...coming]);
  const staying = <T extends { readonly id: string; readonly kind?: DiaryEntry['kind'] }>(all: readonly T[]): readonly T[] => {
    // Of the diary, only a set counted by hand can be taken back, whatever a removal names.
    const stay = all.filter(({ id, kind }) => !gone.has(id) || (kind !== undefined && kind !== 'hand-set'));
    tally.removed.coming += all.length - stay.length;
    return stay;
  };
  const known = new Set(here.sets.map(({ id }) => id));
  const noEdits = record.manifest.counts.edits === 0 || (await db.edits.count()) === 0;
  if (!write && known.size === 0 && noEdits) {
    // No set and no change by hand of it can be here: nothing need be unpacked to tell what it would bring.
    const fresh = record.setIds.filter((id) => !gone.has(id)).length;
    tally.sets.fresh = fresh;
    tally.removed.coming = record.setIds.length - fresh;
  } else await joinAllSets(db, record.sets(), record.setIds.length, { person, known, staying, onProgress }, tally);
  for (const entries of slices(staying(record.diary))) await joinEntries(db, person, entries, write, tally);
  if (person !== null) tally.removed.here = await removedHere(db, person, [...coming], write);
  return tally;
}
