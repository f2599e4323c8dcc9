import Dexie from 'dexie';
import { removedIds } from '../../dose/removal.ts';
import type { Database } from '../database.ts';
import type { PersonId } from '../person.ts';
import { dropSet } from '../remove-set.ts';

/** The ids of all that somebody took back. Runs in the transaction of its caller. */
export async function removedIn(db: Database, person: PersonId): Promise<ReadonlySet<string>> {
  const rows = db.diary.where('[person+day]').between([person, Dexie.minKey], [person, Dexie.maxKey], true, true);
  return removedIds(await rows.toArray());
}

/**
 * Takes away what is here of what was taken back elsewhere. Somebody else's, what still runs, and any entry but a set counted by hand stay. Runs in the
 * transaction of its caller.
 * @param write false: it is only counted
 * @returns how many sets
 */
export async function removedHere(db: Database, person: PersonId, ids: readonly string[], write: boolean): Promise<number> {
  const isTheirs = (row: { readonly person: PersonId } | undefined) => row?.person === person;
  const sets = (await db.sets.bulkGet([...ids])).filter((row) => row !== undefined && isTheirs(row) && row.state !== 'running');
  const counted = (await db.diary.bulkGet([...ids])).filter((row) => row?.kind === 'hand-set' && isTheirs(row));
  if (write) {
    for (const row of sets) if (row) await dropSet(db, row.id);
    await db.diary.bulkDelete(counted.flatMap((row) => (row ? [row.id] : [])));
  }
  return sets.length + counted.length;
}
