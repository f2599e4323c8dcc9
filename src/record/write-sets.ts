import type { MeasuredRep } from '../measure/set-result.ts';
import { fail, ok, type Result } from '../result.ts';
import { atOnce } from './at-once.ts';
import type { Database } from './database.ts';
import { readSet } from './read-sets.ts';
import { editedReps, type RepEdit, sameRep } from './rep-edit.ts';
import type { SetLocks } from './set-locks.ts';
import type { SetEnding } from './set-store.ts';
import type { SetError } from './store-error.ts';
import type { SetHeader } from './stored-set.ts';
import { writtenAfter } from './written-after.ts';

/** Writes the header, as running, unless the set is there already, and its repetitions. */
export const writeReps = (db: Database, header: SetHeader, reps: readonly MeasuredRep[]): Promise<void> =>
  atOnce(db, [db.sets, db.reps], async () => {
    if (!(await db.sets.get(header.id))) await db.sets.add({ ...header, state: 'running' });
    await db.reps.bulkPut(reps.map((rep) => ({ setId: header.id, number: rep.number, rep })));
  });

/** Writes how a set ended. */
export const writeEnd = (db: Database, header: SetHeader, { state, result }: SetEnding): Promise<void> =>
  atOnce(db, [db.sets, db.results, db.facts], async () => {
    await db.sets.put({ ...header, state });
    await db.facts.delete(header.person);
    if (result) await db.results.put({ setId: header.id, result });
  });

/** Adds an edit, as `writtenAfter` says, to a set that has ended and has the repetition that the edit names. */
export const writeEdit = (db: Database, edit: RepEdit): Promise<Result<void, SetError>> =>
  atOnce(db, [db.sets, db.reps, db.results, db.edits, db.facts], async (): Promise<Result<void, SetError>> => {
    const set = await readSet(db, edit.setId);
    if (!set.ok) return set;
    if (set.value.state === 'running') return fail({ kind: 'set-running', id: edit.setId });
    if (edit.kind !== 'add' && !editedReps(set.value).some(({ ref }) => sameRep(ref, edit.rep))) {
      return fail({ kind: 'rep-missing', id: edit.setId });
    }
    // A copy: the database writes the sequence number into what it is given.
    await db.edits.add({ ...writtenAfter(edit, set.value.edits) });
    await db.facts.delete(set.value.person);
    return ok(undefined);
  });

/**
 * Marks the sets that ran in a page that has closed. A set whose page is open, here or in another tab, is not touched.
 * @param patienceMs how long a set may take to turn out abandoned
 */
export async function markAbandoned(db: Database, locks: SetLocks, patienceMs: number): Promise<void> {
  const running = await db.sets.where('state').equals('running').primaryKeys();
  const mark = (id: string) =>
    // It may have ended between the question and the lock.
    atOnce(db, [db.sets, db.facts], async () => {
      const row = await db.sets.get(id);
      if (row?.state !== 'running') return;
      await db.sets.put({ ...row, state: 'interrupted' });
      await db.facts.delete(row.person);
    });
  await Promise.all(running.map((id) => locks.ifAbandoned(id, patienceMs, () => mark(id))));
}
