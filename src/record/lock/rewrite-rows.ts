import Dexie, { type Table } from 'dexie';
import { atOnce } from '../at-once.ts';
import type { Database } from '../database.ts';
import { LOCK_TABLE } from './lock-place.ts';

/** Rows in one transaction. Chosen: some dozens of sets' results with their curves are a few megabytes. */
export const BATCH = 40;

/** Writes some rows of a table again. @returns the key of the last one; null after the end */
const rewritten = (db: Database, table: Table, after: unknown) =>
  atOnce(db, [table], async () => {
    const rows = await table.where(':id').above(after).limit(BATCH).toArray();
    await table.bulkPut(rows);
    const { extractKey } = table.core.schema.primaryKey;
    return rows.length < BATCH ? null : (extractKey?.(rows.at(-1)) ?? null);
  });

/**
 * Reads every row and writes it again, so that each is sealed, or not, as new ones are now. A row is at every moment there in one of the two forms: broken
 * off, it can be done again from the start.
 * @param onProgress share that is done, after each transaction
 */
export async function rewriteRows(db: Database, onProgress: (share: number) => void): Promise<void> {
  const tables = db.tables.filter(({ name }) => name !== LOCK_TABLE);
  const counts = await Promise.all(tables.map((table) => table.count()));
  const all = counts.reduce((sum, count) => sum + count, 0);
  let done = 0;
  onProgress(0);
  for (const [i, table] of tables.entries()) {
    const count = counts[i] ?? 0;
    let begun = 0;
    let after: unknown = Dexie.minKey;
    do {
      after = await rewritten(db, table, after);
      begun = Math.min(begun + BATCH, count);
      if (begun > 0) onProgress((done + begun) / all);
    } while (after !== null);
    done += count;
  }
  onProgress(1);
}
