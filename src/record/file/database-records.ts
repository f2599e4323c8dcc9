import { fail, ok, type Result } from '../../result.ts';
import { atOnce } from '../at-once.ts';
import type { Attempt } from '../attempt.ts';
import type { Database } from '../database.ts';
import { newId } from '../new-id.ts';
import { type PersonId, personShape, SELF } from '../person.ts';
import { setRowsOf } from '../read-sets.ts';
import { shaped, wordsOfShape } from '../shape.ts';
import type { StoreError } from '../store-error.ts';
import type { RecordFile } from './read-record.ts';
import type { Brought, Into, RecordStore, TakeInError } from './record-store.ts';
import { removedIn } from './removed-here.ts';
import { elsewhere, hereAlready, joined, type OnProgress } from './take-in.ts';

const recordTables = (db: Database) => [db.people, db.facts, db.diary, db.sets, db.reps, db.results, db.edits, db.recordIds];

const idsIn = async (db: Database, person: PersonId): Promise<readonly string[]> =>
  (await db.recordIds.toArray()).filter((row) => row.person === person).map(({ id }) => id);

const isHere = async (db: Database, person: PersonId): Promise<boolean> =>
  person === SELF || (await db.people.get(person)) !== undefined;

async function ownerIn(db: Database, ids: readonly string[]): Promise<PersonId | null> {
  for (const row of await db.recordIds.bulkGet([...ids])) if (row && (await isHere(db, row.person))) return row.person;
  // Somebody's record that went out from here and comes back.
  for (const row of await db.people.bulkGet([...ids])) if (row) return row.id;
  return null;
}

async function taken(
  db: Database,
  into: Into,
  record: RecordFile,
  onProgress: OnProgress,
): Promise<Result<Brought, TakeInError>> {
  const person = into.kind === 'here' ? into.person : into.person.id;
  if (into.kind === 'here' && !(await isHere(db, person))) return fail({ kind: 'person-missing', id: person });
  const here = await hereAlready(db, record);
  const other = elsewhere(here, person);
  if (other) return fail({ kind: 'record-elsewhere', ...other });
  if (into.kind === 'new') await db.people.add(into.person);
  const brought = await joined(db, person, record, here, onProgress);
  const ids = record.manifest.person.ids.filter((id) => id !== person);
  await db.recordIds.bulkPut(ids.map((id) => ({ id, person })));
  await db.facts.delete(person);
  return ok(brought);
}

/** The records of an open database. */
export const recordsOn = (db: Database, attempt: Attempt): RecordStore => ({
  idsOf: (person) =>
    attempt<readonly string[], StoreError>(() =>
      atOnce(db, [db.recordIds], async () => {
        const known = await idsIn(db, person);
        if (person !== SELF) return ok([person, ...known]);
        if (known.length > 0) return ok(known);
        const id = newId();
        await db.recordIds.add({ id, person });
        return ok([id]);
      }),
    ),
  setCount: (person) => attempt<number, StoreError>(async () => ok(await setRowsOf(db, person).count())),
  ownerOf: (ids) =>
    attempt<PersonId | null, StoreError>(() =>
      db.transaction('r', [db.people, db.recordIds], async () => ok(await ownerIn(db, ids))),
    ),
  removedOf: (person) =>
    attempt<ReadonlySet<string>, StoreError>(() => db.transaction('r', [db.diary], async () => ok(await removedIn(db, person)))),
  looked: (into, record) =>
    attempt(() =>
      db.transaction('r', recordTables(db), async (): Promise<Result<Brought, TakeInError>> => {
        const here = await hereAlready(db, record);
        const other = elsewhere(here, into);
        return other ? fail({ kind: 'record-elsewhere', ...other }) : ok(await joined(db, into, record, here, null));
      }),
    ),
  taken: (into, record, onProgress = () => undefined) =>
    attempt(async (): Promise<Result<Brought, TakeInError>> => {
      const found = into.kind === 'new' ? shaped(personShape, into.person) : null;
      if (found && !found.ok) return fail({ kind: 'store-refused', what: wordsOfShape(found.error) });
      return atOnce(db, recordTables(db), () => taken(db, into, record, onProgress));
    }),
});
