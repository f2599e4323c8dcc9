import { fail, ok, type Result } from '../../result.ts';
import { atOnce } from '../at-once.ts';
import type { Database } from '../database.ts';
import { shaped, wordsOfShape } from '../shape.ts';
import type { LockError } from './lock-error.ts';
import { LOCK_ID } from './lock-place.ts';
import { type LockRow, lockRowShape } from './lock-row.ts';
import { sameBytes } from './same-bytes.ts';

/** The lock's row in the database. */
export const lockRecord = (db: Database) => ({
  /** Null: there is no lock. */
  async readRow(): Promise<Result<LockRow | null, LockError>> {
    const row = await db.lock.get(LOCK_ID);
    if (row === undefined) return ok(null);
    const found = shaped<LockRow>(lockRowShape, row);
    return found.ok ? found : fail({ kind: 'lock-damaged', what: wordsOfShape(found.error) });
  },
  /** Changes some parts of the row, unless another page has put another passphrase there since. */
  amended: (was: LockRow, change: Partial<LockRow>): Promise<Result<void, LockError>> =>
    atOnce(db, [db.lock], async (): Promise<Result<void, LockError>> => {
      const now = await db.lock.get(LOCK_ID);
      if (!now || !sameBytes(now.wrapped.bytes, was.wrapped.bytes)) return fail({ kind: 'lock-changed' });
      await db.lock.put({ ...now, ...change });
      return ok(undefined);
    }),
});
