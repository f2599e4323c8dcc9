import Dexie from 'dexie';
import type { Removal } from '../dose/removal.ts';
import { fail, ok, type Result } from '../result.ts';
import type { Entry } from '../symptoms/entry.ts';
import { atOnce } from './at-once.ts';
import type { Database, SetRow } from './database.ts';
import { whatWasDoneShape } from './diary-shape.ts';
import { newId } from './new-id.ts';
import { type PersonId, SELF } from './person.ts';
import { shaped } from './shape.ts';
import { type SetError, storeErrorOf } from './store-error.ts';
import { originOf } from './table-sets.ts';

/** When something is taken back, on the person's own calendar. */
export type RemovedAt = Pick<Entry, 'at' | 'day'>;

/** An entry that says so. */
export const removalOf = (recordId: string, of: Removal['of'], what: Removal['what'], { at, day }: RemovedAt): Removal => ({
  id: newId(),
  schema: 1,
  origin: 'own',
  at,
  day,
  kind: 'removal',
  recordId,
  of,
  what,
});

const tablesOf = (db: Database) => [db.sets, db.reps, db.results, db.edits, db.facts, db.diary];

/** Removes a set that has ended, damaged or not, with all that belongs to it, and without a trace. */
export const dropSet = (db: Database, id: string): Promise<Result<SetRow, SetError>> =>
  atOnce(db, [db.sets, db.reps, db.results, db.edits, db.facts], async (): Promise<Result<SetRow, SetError>> => {
    const row = await db.sets.get(id);
    if (!row) return fail({ kind: 'set-missing', id });
    if (row.state === 'running') return fail({ kind: 'set-running', id });
    await db.sets.delete(id);
    await db.reps.where('[setId+number]').between([id, Dexie.minKey], [id, Dexie.maxKey]).delete();
    await db.results.delete(id);
    await db.edits.where('setId').equals(id).delete();
    // A damaged row may not say whose it is.
    if (typeof row.person === 'string') await db.facts.delete(row.person);
    return ok(row);
  });

/** Writes that a set was removed, unless it was invented. */
async function tellRemoved(db: Database, row: SetRow, when: RemovedAt): Promise<void> {
  const person: PersonId = typeof row.person === 'string' ? row.person : SELF;
  const invented = await db.diary.where('[person+origin]').equals([person, 'example']).toArray();
  const isInvented = invented.some((entry) => entry.kind === 'set-link' && entry.setId === row.id);
  if (isInvented || originOf(row, null) === 'example') return;
  const what = shaped(whatWasDoneShape, { exercise: row.exercise, side: row.side, doneAt: row.startedAt });
  await db.diary.add({ ...removalOf(row.id, 'set', what.ok ? what.value : null, when), person });
}

/** Takes a set back: it is gone, and an entry stays that says so. */
export async function removeSet(db: Database, id: string, when: RemovedAt): Promise<Result<void, SetError>> {
  const both = () =>
    atOnce(db, tablesOf(db), async (): Promise<Result<void, SetError>> => {
      const dropped = await dropSet(db, id);
      if (!dropped.ok) return dropped;
      await tellRemoved(db, dropped.value, when);
      return ok(undefined);
    });
  try {
    return await both();
  } catch (cause) {
    if (storeErrorOf(cause).kind !== 'store-full') throw cause;
    // On a full disk there is no room for the entry before the set is gone: removing must work all the more.
    const dropped = await dropSet(db, id);
    if (!dropped.ok) return dropped;
    await atOnce(db, tablesOf(db), () => tellRemoved(db, dropped.value, when)).catch(() => undefined);
    return ok(undefined);
  }
}
