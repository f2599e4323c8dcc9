import type { Table } from 'dexie';
import type { Database } from './database.ts';

/** How much is stored of one kind. */
export interface StoredAmount {
  readonly count: number;
  /** As text, which is about what the browser takes for it. */
  readonly bytes: number;
}

/** How much is stored of each kind, of everybody. */
export interface StoredRows {
  /** Measured sets, each with its repetitions, result and changes by hand. */
  readonly sets: StoredAmount;
  /** Entries: plans, symptoms, answers, sets counted by hand. */
  readonly diary: StoredAmount;
  readonly people: StoredAmount;
}

async function bytesOf(table: Table): Promise<number> {
  let bytes = 0;
  await table.each((row) => {
    bytes += JSON.stringify(row).length;
  });
  return bytes;
}

async function amountOf(counted: Table, ...others: readonly Table[]): Promise<StoredAmount> {
  let bytes = await bytesOf(counted);
  for (const table of others) bytes += await bytesOf(table);
  return { count: await counted.count(), bytes };
}

/** @throws what the database throws */
export const storedRows = async (db: Database): Promise<StoredRows> => ({
  sets: await amountOf(db.sets, db.reps, db.results, db.edits),
  diary: await amountOf(db.diary),
  people: await amountOf(db.people, db.facts),
});
