import type { Table } from 'dexie';
import type { Database } from './database.ts';

/** Runs `body` in one transaction: all of it is written, or nothing. */
export async function atOnce<T>(db: Database, tables: readonly Table[], body: () => Promise<T>): Promise<T> {
  let native: IDBTransaction | null = null;
  try {
    // Dexie keeps a transaction open across `await` only in a function that is itself async.
    return await db.transaction('rw', tables, async (transaction) => {
      native = transaction.idbtrans;
      return await body();
    });
  } catch (cause) {
    // When the browser gives a transaction up, on a full disk say, it alone knows why: the calls in it only tell that they were cut off.
    throw (native as IDBTransaction | null)?.error ?? cause;
  }
}
