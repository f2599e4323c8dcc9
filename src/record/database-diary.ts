import { fail, ok, type Result } from '../result.ts';
import type { CalendarDay } from '../symptoms/calendar-day.ts';
import { addDays } from '../symptoms/calendar-day.ts';
import { byMoment } from '../symptoms/entry.ts';
import { atOnce } from './at-once.ts';
import type { Database } from './database.ts';
import type { DiaryEntry } from './diary-entry.ts';
import { diaryEntryShape } from './diary-shape.ts';
import type { Damaged, DiaryError, DiaryPage, DiaryStore } from './diary-store.ts';
import { doseLogOf } from './dose-log-of.ts';
import { readSince } from './read-sets.ts';
import { sameValue } from './same-value.ts';
import { shaped, wordsOfShape } from './shape.ts';
import type { StoreError } from './store-error.ts';
import { removeSet } from './write-sets.ts';

/** Runs a database call; what it throws becomes a typed failure. */
type Attempt = <T, E extends { readonly kind: string }>(
  call: () => PromiseLike<Result<T, E>>,
) => Promise<Result<T, E | StoreError>>;

const idOf = (row: unknown): string => (typeof row === 'object' && row !== null && 'id' in row ? String(row.id) : '');

function pageOf(rows: readonly unknown[]): DiaryPage {
  const entries: DiaryEntry[] = [];
  const damaged: Damaged[] = [];
  for (const row of rows) {
    const found = shaped<DiaryEntry>(diaryEntryShape, row);
    if (found.ok) entries.push(found.value);
    else damaged.push({ id: idOf(row), what: wordsOfShape(found.error) });
  }
  return { entries: entries.toSorted(byMoment), damaged };
}

/** Adds what is new. An entry that differs from its namesake gives the whole up. */
const added = (db: Database, entries: readonly DiaryEntry[]): Promise<Result<number, DiaryError>> =>
  atOnce(db, [db.diary], async (): Promise<Result<number, DiaryError>> => {
    const fresh = new Map<string, DiaryEntry>();
    for (const entry of entries) {
      const there = fresh.get(entry.id) ?? (await db.diary.get(entry.id));
      if (there && !sameValue(there, entry)) return fail({ kind: 'entry-differs', id: entry.id });
      if (!there) fresh.set(entry.id, entry);
    }
    await db.diary.bulkAdd([...fresh.values()]);
    return ok(fresh.size);
  });

const withoutHandSet = (db: Database, id: string): Promise<Result<void, DiaryError>> =>
  atOnce(db, [db.diary], async (): Promise<Result<void, DiaryError>> => {
    const there = await db.diary.get(id);
    if (!there) return fail({ kind: 'entry-missing', id });
    if (there.kind !== 'hand-set') return fail({ kind: 'entry-stays', id });
    await db.diary.delete(id);
    return ok(undefined);
  });

const withoutExamples = (db: Database): Promise<number> =>
  atOnce(db, [db.diary, db.sets, db.reps, db.results, db.edits], async () => {
    const examples = await db.diary.where('origin').equals('example').toArray();
    for (const entry of examples) if (entry.kind === 'set-link') await removeSet(db, entry.setId);
    await db.diary.bulkDelete(examples.map(({ id }) => id));
    return examples.length;
  });

/** The diary on an open database. */
export function diaryOn(db: Database, attempt: Attempt): DiaryStore {
  return {
    add: (entries) =>
      attempt(async () => {
        for (const entry of entries) {
          const found = shaped(diaryEntryShape, entry);
          if (!found.ok) return fail<DiaryError>({ kind: 'store-refused', what: wordsOfShape(found.error) });
        }
        return added(db, entries);
      }),
    read: (from: CalendarDay, to: CalendarDay) =>
      attempt<DiaryPage, StoreError>(async () => ok(pageOf(await db.diary.where('day').between(from, to, true, true).toArray()))),
    all: () => attempt<DiaryPage, StoreError>(async () => ok(pageOf(await db.diary.toArray()))),
    log: (since, timeZone) =>
      attempt(() =>
        db.transaction('r', [db.diary, db.sets, db.reps, db.results, db.edits], async () => {
          const diary = pageOf(await db.diary.toArray());
          // A day earlier, since a day anywhere begins at most 14 hours before the one in UTC.
          const sets = await readSince(db, `${addDays(since, -1)}T00:00:00.000Z`);
          const log = doseLogOf(diary.entries, sets.sets, timeZone);
          const done = log.done.filter(({ day }) => day >= since);
          return ok({ log: { ...log, done }, damaged: [...diary.damaged, ...sets.damaged] });
        }),
      ),
    removeHandSet: (id) => attempt(() => withoutHandSet(db, id)),
    removeExamples: () => attempt<number, StoreError>(async () => ok(await withoutExamples(db))),
  };
}
