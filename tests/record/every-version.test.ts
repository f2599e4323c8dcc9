/** Databases of every version there ever was, as the program of that time wrote them, opened by the present one. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { StorePlatform } from '../../src/record/database.ts';
import { VERSIONS } from '../../src/record/database.ts';
import { openLockableStore, openSetStore } from '../../src/record/open-store.ts';
import { SELF } from '../../src/record/person.ts';
import type { Store } from '../../src/record/store.ts';
import { fakeBrowser } from './fake-browser.ts';
import { type OldDatabase, oldDatabase, putThere } from './old-database.ts';
import { header, idOf, momentOf, rep, result } from './set-builders.ts';
import { wentWell } from './went-well.ts';

const NAMES = readdirSync(join(import.meta.dirname, 'fixtures')).map((file) => file.replace('.json', ''));

async function opened(page: StorePlatform, { passphrase }: OldDatabase): Promise<Store> {
  if (passphrase === undefined) return wentWell(await openSetStore(page));
  const lockable = wentWell(await openLockableStore(page));
  expect(lockable.lock.state()).toBe('locked');
  wentWell(await lockable.lock.unlock(passphrase));
  return wentWell(await lockable.store);
}

/** All that can be read, of everybody, each by its schema; what can't is named. */
async function everything(store: Store) {
  const people = wentWell(await store.people.list());
  const found = {
    sets: 0,
    edits: 0,
    diary: 0,
    damaged: [...people.damaged],
    states: new Map<string, string>(),
    reps: new Map<string, number>(),
  };
  for (const id of [SELF, ...people.people.map(({ person }) => person.id)]) {
    const sets = wentWell(await store.of(id).list({ limit: 1000 }));
    const diary = wentWell(await store.of(id).diary.all());
    found.damaged.push(...sets.damaged, ...diary.damaged);
    found.sets += sets.sets.length;
    found.edits += sets.sets.flatMap(({ edits }) => edits).length;
    found.diary += diary.entries.length;
    for (const set of sets.sets) {
      found.states.set(set.id, set.state);
      found.reps.set(set.id, set.reps.length);
    }
  }
  return { ...found, people: people.people.length };
}

const rowsOf = ({ tables }: OldDatabase, table: string): readonly Record<string, unknown>[] =>
  (tables[table]?.rows ?? []) as readonly Record<string, unknown>[];

test('there is a database of every version', () => {
  const kept = new Set(NAMES.map((name) => Number(/^v(\d+)/.exec(name)?.[1])));
  // The newest is what the program writes today.
  expect(
    VERSIONS.slice(0, -1)
      .map(({ version }) => version)
      .filter((version) => !kept.has(version)),
  ).toEqual([]);
});

describe.each(NAMES)('a database left by %s', (name) => {
  const old = oldDatabase(name);

  test('is read whole by the present program: as many of everything, nothing damaged', async () => {
    const page = fakeBrowser().page();
    await putThere(page.indexedDB, old);
    const found = await everything(await opened(page, old));
    expect(found.damaged).toEqual([]);
    expect(found).toMatchObject({
      sets: rowsOf(old, 'sets').length,
      edits: rowsOf(old, 'edits').length,
      diary: rowsOf(old, 'diary').length,
      people: rowsOf(old, 'people').length,
    });
    expect(found.sets).toBeGreaterThanOrEqual(4);
  });

  test('keeps the set whose page closed, as broken off and with its repetitions', async () => {
    const page = fakeBrowser().page();
    await putThere(page.indexedDB, old);
    const found = await everything(await opened(page, old));
    expect([...found.states.values()]).not.toContain('running');
    for (const { id, state } of rowsOf(old, 'sets')) {
      expect(found.states.get(String(id))).toBe(state === 'running' ? 'interrupted' : state);
      const live = rowsOf(old, 'reps').filter(({ setId }) => setId === id).length;
      const measured = rowsOf(old, 'results').some(({ setId }) => setId === id);
      if (!measured) expect(found.reps.get(String(id))).toBe(live);
    }
  });

  test('can be written to, and opened again', async () => {
    const browser = fakeBrowser();
    const page = browser.page();
    await putThere(page.indexedDB, old);
    const store = await opened(page, old);
    const before = await everything(store);
    const fresh = header({ id: idOf(90), startedAt: momentOf(0) });
    wentWell(await store.end(fresh, { state: 'finished', result: result([rep(1)]) }));
    wentWell(await store.edit({ id: idOf(91), schema: 1, setId: idOf(1), at: momentOf(1), kind: 'add' }));
    store.close();
    const after = await everything(await opened(browser.page(), old));
    expect(after).toMatchObject({ sets: before.sets + 1, edits: before.edits + 1, diary: before.diary, damaged: [] });
  });

  if (old.passphrase !== undefined) {
    test('stays closed to a wrong passphrase', async () => {
      const page = fakeBrowser().page();
      await putThere(page.indexedDB, old);
      const lockable = wentWell(await openLockableStore(page));
      expect(await lockable.lock.unlock('four red kites')).toMatchObject({ ok: false, error: { kind: 'lock-wrong' } });
      expect(lockable.lock.state()).toBe('locked');
    });
  }
});

test('a database of a version to come is left as it is, and told of', async () => {
  const page = fakeBrowser().page();
  const newest = oldDatabase('v12');
  const future: OldDatabase = {
    version: 990,
    tables: {
      ...newest.tables,
      dreams: { keyPath: 'id', autoIncrement: false, indexes: [], rows: [{ id: 'a', what: 'not known today' }] },
    },
  };
  await putThere(page.indexedDB, future);
  expect(await openSetStore(page)).toEqual({ ok: false, error: { kind: 'store-newer' } });
  const there = await new Promise<IDBDatabase>((resolve) => {
    const opening = page.indexedDB.open('evenside');
    opening.onsuccess = () => resolve(opening.result);
  });
  expect(there.version).toBe(990);
  for (const [table, { rows }] of Object.entries(future.tables)) {
    const found = await new Promise<unknown[]>((resolve) => {
      const asking = there.transaction(table).objectStore(table).getAll();
      asking.onsuccess = () => resolve(asking.result);
    });
    expect(found).toEqual(rows);
  }
});
