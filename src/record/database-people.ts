import Dexie from 'dexie';
import { personFacts } from '../dose/person-facts.ts';
import { fail, ok, type Result } from '../result.ts';
import { atOnce } from './at-once.ts';
import type { Attempt } from './attempt.ts';
import type { Database } from './database.ts';
import { readLog } from './database-diary.ts';
import { FACTS_RULES, factsIn } from './facts-row.ts';
import type { ListedPerson, PeopleList, PeopleStore, PersonError } from './people-store.ts';
import { type Person, type PersonId, personShape } from './person.ts';
import { setRowsOf } from './read-sets.ts';
import { dropSet } from './remove-set.ts';
import { idOfRow, shaped, wordsOfShape } from './shape.ts';
import type { StoreError } from './store-error.ts';
import { forgetServer, serverTables } from './sync/forget-server.ts';

/** How many days of sets the facts rest on, back from the last set. Chosen: what the day and the review look back on, eight weeks. */
const FACTS_DAYS = 56;
const DAY_MS = 86_400_000;

async function listed(db: Database): Promise<PeopleList> {
  const [rows, factsRows] = await Promise.all([db.people.toArray(), db.facts.toArray()]);
  const facts = new Map(factsRows.map((row) => [row.person, factsIn(row)]));
  const people: ListedPerson[] = [];
  const damaged: { id: string; what: string }[] = [];
  for (const row of rows) {
    const found = shaped<Person>(personShape, row);
    if (found.ok) people.push({ person: found.value, facts: facts.get(found.value.id) ?? null });
    else damaged.push({ id: idOfRow(row), what: wordsOfShape(found.error) });
  }
  return { people, damaged };
}

/** The moment from which sets are looked at: some weeks before the last one. */
async function sinceOf(db: Database, person: PersonId): Promise<string> {
  const last = await setRowsOf(db, person).last();
  return last ? new Date(Date.parse(last.startedAt) - FACTS_DAYS * DAY_MS).toISOString() : '';
}

const without = (db: Database, id: PersonId) =>
  atOnce(
    db,
    [db.people, db.facts, db.diary, db.sets, db.reps, db.results, db.edits, db.recordIds, ...serverTables(db)],
    async (): Promise<Result<void, PersonError | { readonly kind: 'set-running'; readonly id: string }>> => {
      if (!(await db.people.get(id))) return fail({ kind: 'person-missing', id });
      const sets = await setRowsOf(db, id).toArray();
      const running = sets.find(({ state }) => state === 'running');
      if (running) return fail({ kind: 'set-running', id: running.id });
      for (const set of sets) await dropSet(db, set.id);
      await db.diary.where('[person+day]').between([id, Dexie.minKey], [id, Dexie.maxKey]).delete();
      await db.facts.delete(id);
      await forgetServer(db, id);
      await db.recordIds.filter(({ person }) => person === id).delete();
      await db.people.delete(id);
      return ok(undefined);
    },
  );

/** The people of an open database. */
export function peopleOn(db: Database, attempt: Attempt): PeopleStore {
  return {
    list: () =>
      attempt<PeopleList, StoreError>(() => db.transaction('r', [db.people, db.facts], async () => ok(await listed(db)))),
    read: (id) =>
      attempt(async (): Promise<Result<Person, PersonError>> => {
        const row = await db.people.get(id);
        if (!row) return fail({ kind: 'person-missing', id });
        const found = shaped<Person>(personShape, row);
        return found.ok ? found : fail({ kind: 'store-failed', detail: `person ${id}: ${wordsOfShape(found.error)}` });
      }),
    save: (person) =>
      attempt(async (): Promise<Result<void, StoreError>> => {
        const found = shaped<Person>(personShape, person);
        if (!found.ok) return fail({ kind: 'store-refused', what: wordsOfShape(found.error) });
        await atOnce(db, [db.people], () => db.people.put(found.value));
        return ok(undefined);
      }),
    facts: (id, timeZone) =>
      attempt(() =>
        atOnce(db, [db.facts, db.diary, db.sets, db.reps, db.results, db.edits], async () => {
          const { log } = await readLog(db, id, await sinceOf(db, id), timeZone);
          const facts = personFacts(log);
          await db.facts.put({ person: id, rules: FACTS_RULES, facts });
          return ok(facts);
        }),
      ),
    remove: (id) => attempt(() => without(db, id)),
  };
}
