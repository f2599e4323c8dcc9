import Dexie from 'dexie';
import type { Database } from '../database.ts';
import type { PersonId } from '../person.ts';

/** The tables that `forgetServer` writes. */
export const serverTables = (db: Database) => [db.servers, db.serverChoices, db.confirmed];

/** Removes how far it went with a person's server. Runs in the transaction of its caller. */
export async function forgetProgress(db: Database, person: PersonId): Promise<void> {
  await db.servers.delete(person);
  await db.confirmed.where('[person+id]').between([person, Dexie.minKey], [person, Dexie.maxKey]).delete();
}

/** Removes what is known of a person's server, and what was chosen for it. Runs in the transaction of its caller. */
export async function forgetServer(db: Database, person: PersonId): Promise<void> {
  await forgetProgress(db, person);
  await db.serverChoices.delete(person);
}
