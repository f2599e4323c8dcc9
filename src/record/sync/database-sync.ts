import Dexie from 'dexie';
import { ok, type Result } from '../../result.ts';
import { atOnce } from '../at-once.ts';
import type { Attempt } from '../attempt.ts';
import type { Database } from '../database.ts';
import type { DiaryEntry } from '../diary-entry.ts';
import { diaryEntryShape } from '../diary-shape.ts';
import type { PersonId } from '../person.ts';
import { wholeSets } from '../read-sets.ts';
import { shaped } from '../shape.ts';
import type { StoreError } from '../store-error.ts';
import type { StoredSet } from '../stored-set.ts';
import { originOf } from '../table-sets.ts';
import { forgetProgress, forgetServer, serverTables } from './forget-server.ts';
import type { Connection, ServerChoice, SyncStore, Waiting } from './sync-store.ts';

const ofPerson = (person: PersonId) =>
  [
    [person, Dexie.minKey],
    [person, Dexie.maxKey],
  ] as const;

const withoutPerson = ({ person: _, ...entry }: DiaryEntry & { readonly person: PersonId }): unknown => entry;

async function waitingIn(db: Database, person: PersonId, most: number): Promise<Waiting> {
  const confirmed = new Set(
    (
      await db.confirmed
        .where('[person+id]')
        .between(...ofPerson(person))
        .primaryKeys()
    ).map(([, id]) => id),
  );
  const setKeys = await db.sets
    .where('[person+startedAt+id]')
    .between(...ofPerson(person))
    .primaryKeys();
  const entryKeys = await db.diary
    .where('[person+day]')
    .between(...ofPerson(person))
    .primaryKeys();
  const fresh = entryKeys.filter((id) => !confirmed.has(id));
  const entries: DiaryEntry[] = [];
  for (const row of await db.diary.bulkGet(fresh)) {
    // What can't be read stays here; what is invented is nobody's record.
    const found = row && shaped<DiaryEntry>(diaryEntryShape, withoutPerson(row));
    if (found?.ok && found.value.origin === 'own') entries.push(found.value);
  }
  const mine = new Set(setKeys);
  const edits = (await db.edits.toArray()).filter(({ id, setId }) => mine.has(setId) && !confirmed.has(id));
  const linked = entries.flatMap((entry) => (entry.kind === 'set-link' ? [entry.setId] : []));
  const concerned = new Set([...edits.map(({ setId }) => setId), ...linked]);
  const invented = new Set(
    (await db.diary.where('[person+origin]').equals([person, 'example']).toArray()).flatMap((row) =>
      row.kind === 'set-link' ? [row.setId] : [],
    ),
  );
  const ids = new Set(entries.map(({ id }) => id));
  const sets: StoredSet[] = [];
  const rows = await db.sets.bulkGet(setKeys.filter((id) => !confirmed.has(id) || concerned.has(id)));
  const over = rows.flatMap((row) =>
    row && row.state !== 'running' && originOf(row, null) === 'own' && !invented.has(row.id) ? [row] : [],
  );
  for (const { id } of over) if (!confirmed.has(id)) ids.add(id);
  const going = new Set(over.map(({ id }) => id));
  for (const { id, setId } of edits) if (going.has(setId)) ids.add(id);
  // What can't be read stays here and holds up nothing.
  for (let i = 0; i < over.length && sets.length < most; i += most) {
    for (const found of await wholeSets(db, over.slice(i, i + most))) if (found.ok) sets.push(found.value);
  }
  return { sets, entries, ids };
}

/** Of another server than that one, nothing was chosen. */
async function choiceIn(db: Database, person: PersonId, server: string): Promise<ServerChoice> {
  const found = await db.serverChoices.get(person);
  return found?.server === server ? found : { person, server, automatic: false, refreshToken: null };
}

/** What the open database knows of servers. */
export const syncOn = (db: Database, attempt: Attempt): SyncStore => ({
  connection: (person) =>
    attempt<Connection | null, StoreError>(() =>
      db.transaction('r', [db.servers], async () => ok((await db.servers.get(person)) ?? null)),
    ),
  save: (connection) =>
    attempt<void, StoreError>(() =>
      atOnce(db, serverTables(db), async () => {
        const before = await db.servers.get(connection.person);
        if (before && (before.server !== connection.server || before.patient !== connection.patient))
          await forgetProgress(db, connection.person);
        await db.servers.put(connection);
        return ok(undefined);
      }),
    ),
  choice: (person, server) =>
    attempt<ServerChoice, StoreError>(() =>
      db.transaction('r', [db.serverChoices], async () => ok(await choiceIn(db, person, server))),
    ),
  choose: (person, server, part) =>
    attempt<void, StoreError>(() =>
      atOnce(db, [db.serverChoices], async () => {
        await db.serverChoices.put({ ...(await choiceIn(db, person, server)), ...part });
        return ok(undefined);
      }),
    ),
  choices: (server) =>
    attempt<readonly ServerChoice[], StoreError>(() =>
      db.transaction('r', [db.serverChoices], async () =>
        ok((await db.serverChoices.toArray()).filter((each) => each.server === server)),
      ),
    ),
  disconnect: (person) =>
    attempt<void, StoreError>(() =>
      atOnce(db, serverTables(db), async () => {
        await forgetServer(db, person);
        return ok(undefined);
      }),
    ),
  confirm: (person, ids) =>
    attempt<void, StoreError>(() =>
      atOnce(db, [db.confirmed], async () => {
        await db.confirmed.bulkPut(ids.map((id) => ({ person, id })));
        return ok(undefined);
      }),
    ),
  waiting: (person, most) =>
    attempt<Waiting, StoreError>(() =>
      db.transaction(
        'r',
        [db.sets, db.reps, db.results, db.edits, db.diary, db.confirmed],
        async (): Promise<Result<Waiting, StoreError>> => ok(await waitingIn(db, person, most)),
      ),
    ),
});
