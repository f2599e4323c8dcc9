import Dexie from 'dexie';
import { fail, type Result } from '../result.ts';
import type { Database, EditRow, SetRow } from './database.ts';
import type { ListCursor, SetPage } from './set-store.ts';
import { shaped, wordsOfShape } from './shape.ts';
import type { SetError } from './store-error.ts';
import type { StoredSet } from './stored-set.ts';
import { storedSetShape } from './stored-set-shape.ts';

const withoutSeq = ({ seq: _, ...edit }: EditRow): unknown => edit;

async function whole(db: Database, row: SetRow): Promise<Result<StoredSet, SetError>> {
  const { id } = row;
  const [live, measured, edits] = await Promise.all([
    db.reps.where('[setId+number]').between([id, Dexie.minKey], [id, Dexie.maxKey]).toArray(),
    db.results.get(id),
    db.edits.where('setId').equals(id).sortBy('seq'),
  ]);
  // A result that can't be read is no missing one.
  const result = measured ? measured.result : null;
  const reps = result ? result.reps : live.map(({ rep }) => rep);
  const found = shaped(storedSetShape, { ...row, reps, result, edits: edits.map(withoutSeq) });
  return found.ok ? found : fail({ kind: 'set-damaged', id, what: wordsOfShape(found.error) });
}

/** One set with all that belongs to it. Runs in the transaction of its caller. */
export async function readSet(db: Database, id: string): Promise<Result<StoredSet, SetError>> {
  const row = await db.sets.get(id);
  return row ? whole(db, row) : fail({ kind: 'set-missing', id });
}

/** Sets from the newest to the oldest. Runs in the transaction of its caller. */
export async function readPage(db: Database, limit: number, after?: ListCursor): Promise<SetPage> {
  const index = db.sets.where('[startedAt+id]');
  const older = after ? index.below([after.startedAt, after.id]) : index.above([Dexie.minKey, Dexie.minKey]);
  const rows = await older
    .reverse()
    .limit(limit + 1)
    .toArray();
  const shown = rows.slice(0, limit);
  const last = rows.length > limit ? shown.at(-1) : undefined;
  return { ...(await wholes(db, shown)), next: last ? { startedAt: last.startedAt, id: last.id } : null };
}

/** The sets that began at this moment or later, oldest first. Runs in the transaction of its caller. */
export const readSince = async (db: Database, moment: string): Promise<Omit<SetPage, 'next'>> =>
  wholes(db, await db.sets.where('[startedAt+id]').aboveOrEqual([moment, Dexie.minKey]).toArray());

async function wholes(db: Database, rows: readonly SetRow[]): Promise<Omit<SetPage, 'next'>> {
  const sets: StoredSet[] = [];
  const damaged: { id: string; what: string }[] = [];
  for (const row of rows) {
    const found = await whole(db, row);
    if (found.ok) sets.push(found.value);
    else if (found.error.kind === 'set-damaged') damaged.push({ id: row.id, what: found.error.what });
  }
  return { sets, damaged };
}
