import Dexie from 'dexie';
import type { MeasuredRep } from '../measure/set-result.ts';
import { fail, type Result } from '../result.ts';
import { byMoment } from '../symptoms/entry.ts';
import type { Database, EditRow, ResultRow, SetRow } from './database.ts';
import type { PersonId } from './person.ts';
import { resultOfRow } from './result-in-row.ts';
import type { ListCursor, SetPage } from './set-store.ts';
import { shaped, wordsOfShape } from './shape.ts';
import type { SetError } from './store-error.ts';
import type { StoredSet } from './stored-set.ts';
import { storedSetShape } from './stored-set-shape.ts';

const withoutSeq = ({ seq: _, ...edit }: EditRow): unknown => edit;

/** What belongs to some sets, each in the order of the rows. */
interface Belongings {
  readonly results: readonly (ResultRow | undefined)[];
  /** By set, by moment and id. */
  readonly edits: ReadonlyMap<string, readonly EditRow[]>;
}

async function belongings(db: Database, ids: readonly string[]): Promise<Belongings> {
  const [results, found] = await Promise.all([db.results.bulkGet([...ids]), db.edits.where('setId').anyOf(ids).toArray()]);
  const edits = new Map<string, EditRow[]>();
  for (const edit of found.sort(byMoment)) {
    const ofSet = edits.get(edit.setId);
    if (ofSet) ofSet.push(edit);
    else edits.set(edit.setId, [edit]);
  }
  return { results, edits };
}

const liveReps = async (db: Database, id: string): Promise<readonly MeasuredRep[]> =>
  (await db.reps.where('[setId+number]').between([id, Dexie.minKey], [id, Dexie.maxKey]).toArray()).map(({ rep }) => rep);

/** The sets of the rows, with few questions to the database however many they are. Runs in the transaction of its caller. */
export async function wholeSets(db: Database, rows: readonly SetRow[]): Promise<readonly Result<StoredSet, SetError>[]> {
  const { results, edits } = await belongings(
    db,
    rows.map(({ id }) => id),
  );
  return Promise.all(
    rows.map(async (row, i): Promise<Result<StoredSet, SetError>> => {
      const measured = results[i];
      // A result that can't be read is no missing one.
      const result = measured ? resultOfRow(measured.result) : null;
      const reps = measured?.result ? measured.result.reps : await liveReps(db, row.id);
      const set = { ...row, reps, result, edits: (edits.get(row.id) ?? []).map(withoutSeq) };
      const found = shaped(storedSetShape, set);
      return found.ok ? found : fail({ kind: 'set-damaged', id: row.id, what: wordsOfShape(found.error) });
    }),
  );
}

/** One set with all that belongs to it. Runs in the transaction of its caller. */
export async function readSet(db: Database, id: string): Promise<Result<StoredSet, SetError>> {
  const row = await db.sets.get(id);
  const missing = fail<SetError>({ kind: 'set-missing', id });
  return row ? ((await wholeSets(db, [row]))[0] ?? missing) : missing;
}

/** Somebody's sets from the newest to the oldest. Runs in the transaction of its caller. */
export async function readPage(db: Database, person: PersonId, limit: number, after?: ListCursor): Promise<SetPage> {
  const end = after ? [person, after.startedAt, after.id] : [person, Dexie.maxKey];
  const rows = await db.sets
    .where('[person+startedAt+id]')
    .between([person, Dexie.minKey, Dexie.minKey], end, true, false)
    .reverse()
    .limit(limit + 1)
    .toArray();
  const shown = rows.slice(0, limit);
  const last = rows.length > limit ? shown.at(-1) : undefined;
  return { ...(await wholes(db, shown)), next: last ? { startedAt: last.startedAt, id: last.id } : null };
}

/** Somebody's rows, oldest first. @param since ISO 8601, UTC; left out: all of them */
export const setRowsOf = (db: Database, person: PersonId, since: string | typeof Dexie.minKey = Dexie.minKey) =>
  db.sets.where('[person+startedAt+id]').between([person, since, Dexie.minKey], [person, Dexie.maxKey]);

/** Somebody's sets that began at this moment or later, oldest first. Runs in the transaction of its caller. */
export const readSince = async (db: Database, person: PersonId, moment: string): Promise<Omit<SetPage, 'next'>> =>
  wholes(db, await setRowsOf(db, person, moment).toArray());

async function wholes(db: Database, rows: readonly SetRow[]): Promise<Omit<SetPage, 'next'>> {
  const sets: StoredSet[] = [];
  const damaged: { id: string; what: string }[] = [];
  for (const found of await wholeSets(db, rows)) {
    if (found.ok) sets.push(found.value);
    else if (found.error.kind === 'set-damaged') damaged.push({ id: found.error.id, what: found.error.what });
  }
  return { sets, damaged };
}
