import Dexie from 'dexie';
import type { DoseLog } from '../dose/dose-log.ts';
import { fail, ok, type Result } from '../result.ts';
import type { CalendarDay } from '../symptoms/calendar-day.ts';
import { addDays } from '../symptoms/calendar-day.ts';
import { byMoment } from '../symptoms/entry.ts';
import { atOnce } from './at-once.ts';
import type { Attempt } from './attempt.ts';
import type { Database, DiaryRow } from './database.ts';
import type { DiaryEntry } from './diary-entry.ts';
import { diaryEntryShape, whatWasDoneShape } from './diary-shape.ts';
import type { Damaged, DiaryError, DiaryPage, DiaryStore } from './diary-store.ts';
import { doseLogOf } from './dose-log-of.ts';
import type { PersonId } from './person.ts';
import { readSince } from './read-sets.ts';
import { dropSet, type RemovedAt, removalOf } from './remove-set.ts';
import { sameValue } from './same-value.ts';
import { idOfRow, shaped, wordsOfShape } from './shape.ts';
import type { StoreError } from './store-error.ts';

/** The entry of a row: whose it is stays with the table. */
const withoutPerson = ({ person: _, ...entry }: DiaryRow): unknown => entry;

function pageOf(rows: readonly DiaryRow[]): DiaryPage {
  const entries: DiaryEntry[] = [];
  const damaged: Damaged[] = [];
  for (const row of rows) {
    const found = shaped<DiaryEntry>(diaryEntryShape, withoutPerson(row));
    if (found.ok) entries.push(found.value);
    else damaged.push({ id: idOfRow(row), what: wordsOfShape(found.error) });
  }
  return { entries: entries.toSorted(byMoment), damaged };
}

/** Adds what is new. An entry that differs from its namesake, or is somebody else's, gives the whole up. */
const added = (db: Database, person: PersonId, entries: readonly DiaryEntry[]): Promise<Result<number, DiaryError>> =>
  atOnce(db, [db.diary, db.facts], async (): Promise<Result<number, DiaryError>> => {
    const fresh = new Map<string, DiaryRow>();
    for (const entry of entries) {
      const row: DiaryRow = { ...entry, person };
      const there = fresh.get(entry.id) ?? (await db.diary.get(entry.id));
      if (there && !sameValue(there, row)) return fail({ kind: 'entry-differs', id: entry.id });
      if (!there) fresh.set(entry.id, row);
    }
    await db.diary.bulkAdd([...fresh.values()]);
    await db.facts.delete(person);
    return ok(fresh.size);
  });

const withoutHandSet = (db: Database, person: PersonId, id: string, when: RemovedAt): Promise<Result<void, DiaryError>> =>
  atOnce(db, [db.diary, db.facts], async (): Promise<Result<void, DiaryError>> => {
    const there = await db.diary.get(id);
    if (there?.person !== person) return fail({ kind: 'entry-missing', id });
    if (there.kind !== 'hand-set') return fail({ kind: 'entry-stays', id });
    await db.diary.delete(id);
    if (there.origin === 'own') {
      const what = shaped(whatWasDoneShape, { exercise: there.exercise, side: there.side, doneAt: there.at });
      await db.diary.add({ ...removalOf(id, 'hand-set', what.ok ? what.value : null, when), person });
    }
    await db.facts.delete(person);
    return ok(undefined);
  });

const withoutExamples = (db: Database, person: PersonId): Promise<number> =>
  atOnce(db, [db.diary, db.facts, db.sets, db.reps, db.results, db.edits], async () => {
    const examples = await db.diary.where('[person+origin]').equals([person, 'example']).toArray();
    for (const entry of examples) if (entry.kind === 'set-link') await dropSet(db, entry.setId);
    await db.diary.bulkDelete(examples.map(({ id }) => id));
    await db.facts.delete(person);
    return examples.length;
  });

const rowsOf = (db: Database, person: PersonId, from: CalendarDay | typeof Dexie.minKey, to: CalendarDay | typeof Dexie.maxKey) =>
  db.diary.where('[person+day]').between([person, from], [person, to], true, true).toArray();

/**
 * Somebody's whole diary, with the measured sets that began at a moment or later. Runs in the transaction of its caller.
 * @param since ISO 8601, UTC
 */
export async function readLog(
  db: Database,
  person: PersonId,
  since: string,
  timeZone: string,
): Promise<{ readonly log: DoseLog; readonly damaged: readonly Damaged[] }> {
  const diary = pageOf(await rowsOf(db, person, Dexie.minKey, Dexie.maxKey));
  const sets = await readSince(db, person, since);
  return { log: doseLogOf(diary.entries, sets.sets, timeZone), damaged: [...diary.damaged, ...sets.damaged] };
}

/** Somebody's diary on an open database. */
export function diaryOn(db: Database, person: PersonId, attempt: Attempt): DiaryStore {
  return {
    add: (entries) =>
      attempt(async () => {
        for (const entry of entries) {
          const found = shaped(diaryEntryShape, entry);
          if (!found.ok) return fail<DiaryError>({ kind: 'store-refused', what: wordsOfShape(found.error) });
        }
        return added(db, person, entries);
      }),
    read: (from: CalendarDay, to: CalendarDay) =>
      attempt<DiaryPage, StoreError>(async () => ok(pageOf(await rowsOf(db, person, from, to)))),
    all: () => attempt<DiaryPage, StoreError>(async () => ok(pageOf(await rowsOf(db, person, Dexie.minKey, Dexie.maxKey)))),
    log: (since, timeZone) =>
      attempt(() =>
        db.transaction('r', [db.diary, db.sets, db.reps, db.results, db.edits], async () => {
          // A day earlier, since a day anywhere begins at most 14 hours before the one in UTC.
          const { log, damaged } = await readLog(db, person, `${addDays(since, -1)}T00:00:00.000Z`, timeZone);
          return ok({ log: { ...log, done: log.done.filter(({ day }) => day >= since) }, damaged });
        }),
      ),
    removeHandSet: (id, when) => attempt(() => withoutHandSet(db, person, id, when)),
    removeExamples: () => attempt<number, StoreError>(async () => ok(await withoutExamples(db, person))),
  };
}
