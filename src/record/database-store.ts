import type * as v from 'valibot';
import { fail, ok, type Result } from '../result.ts';
import type { Database } from './database.ts';
import { diaryOn } from './database-diary.ts';
import { peopleOn } from './database-people.ts';
import { type PersonId, SELF } from './person.ts';
import { readPage, readSet } from './read-sets.ts';
import { removeSet } from './remove-set.ts';
import type { SetLocks } from './set-locks.ts';
import { shaped, wordsOfShape } from './shape.ts';
import type { PersonStore, Store } from './store.ts';
import { type StoreError, storeErrorOf } from './store-error.ts';
import type { StoredRows } from './stored-rows.ts';
import { editShape, headerShape, repShape, resultShape } from './stored-set-shape.ts';
import { markAbandoned, writeEdit, writeEnd, writeReps } from './write-sets.ts';

/** Why a value may not be stored; null when it has the shape that will be read back. */
function misfit(schema: v.GenericSchema, value: unknown): StoreError | null {
  const found = shaped(schema, value);
  return found.ok ? null : { kind: 'store-refused', what: wordsOfShape(found.error) };
}

const firstOf = (errors: Iterable<StoreError | null>): StoreError | null => {
  for (const error of errors) if (error) return error;
  return null;
};

/**
 * The store on an open database.
 * @param outdated whether a newer version of the program has taken the database over
 * @param onClose called when it is closed
 */
export function storeOn(db: Database, locks: SetLocks, outdated: () => boolean, onClose: () => void): Store {
  /** Runs a database call; what it throws becomes a typed failure. */
  async function attempt<T, E extends { readonly kind: string }>(
    call: () => PromiseLike<Result<T, E>>,
  ): Promise<Result<T, E | StoreError>> {
    try {
      return await call();
    } catch (cause) {
      return fail(outdated() && !db.isOpen() ? { kind: 'store-newer' } : storeErrorOf(cause));
    }
  }
  /** The same for a call on sets of which some may have been abandoned since the page opened. */
  const settled = <T, E extends { readonly kind: string }>(call: () => PromiseLike<Result<T, E>>) =>
    attempt(async () => {
      // What can't be marked now, on a full disk, is marked another time; the call itself tells of the disk if it writes.
      await markAbandoned(db, locks, 0).catch(() => undefined);
      return call();
    });
  const all = [db.sets, db.reps, db.results, db.edits];

  const sets: Omit<PersonStore, 'list' | 'diary'> = {
    begin: async (header) => {
      const wrong = misfit(headerShape, header);
      if (wrong) return fail(wrong);
      const held = await attempt<boolean, StoreError>(async () => ok(await locks.hold(header.id)));
      if (!held.ok) return held;
      if (!held.value) throw new Error(`begin requires a set that runs nowhere else, got ${header.id}`);
      return attempt(async () => ok(await writeReps(db, header, [])));
    },
    append: (header, reps) =>
      attempt(async () => {
        const wrong = firstOf([misfit(headerShape, header), ...reps.map((rep) => misfit(repShape, rep))]);
        if (wrong) return fail(wrong);
        return ok(await writeReps(db, header, reps));
      }),
    end: async (header, ending) => {
      const written = await attempt(async () => {
        const wrong = misfit(headerShape, header) ?? (ending.result && misfit(resultShape, ending.result));
        if (wrong) return fail(wrong);
        return ok(await writeEnd(db, header, ending));
      });
      locks.release(header.id);
      return written;
    },
    read: (id) => settled(() => db.transaction('r', all, async () => await readSet(db, id))),
    edit: (edit) =>
      settled(async () => {
        const wrong = misfit(editShape, edit);
        return wrong ? fail(wrong) : writeEdit(db, edit);
      }),
    remove: (id, when) => settled(() => removeSet(db, id, when)),
  };
  const of = (person: PersonId): PersonStore => ({
    ...sets,
    list: ({ limit, after }) => settled(() => db.transaction('r', all, async () => ok(await readPage(db, person, limit, after)))),
    diary: diaryOn(db, person, attempt),
  });
  return {
    ...of(SELF),
    of,
    people: peopleOn(db, attempt),
    records: async () => (await import('./file/database-records.ts')).recordsOn(db, attempt),
    rows: () => attempt<StoredRows, StoreError>(async () => ok(await (await import('./stored-rows.ts')).storedRows(db))),
    sync: async () => (await import('./sync/database-sync.ts')).syncOn(db, attempt),
    close: () => {
      locks.releaseAll();
      db.close();
      onClose();
    },
  };
}
