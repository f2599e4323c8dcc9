/** The lock and what breaks off in the middle, or lies damaged in the database. */
import { IDBObjectStore } from 'fake-indexeddb';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { BATCH } from '../../../src/record/lock/rewrite-rows.ts';
import { idOf, removedAt } from '../set-builders.ts';
import { wentWell } from '../went-well.ts';
import { filled, opened, unlocked } from './locked-pages.ts';
import { FEW_ROUNDS, PASSPHRASE } from './opened-with-lock.ts';
import { putRaw, rawRows } from './raw-rows.ts';
import { told } from './seeded-store.ts';

afterEach(() => {
  vi.restoreAllMocks();
});

describe('a page that goes away while every row is written again', () => {
  /** More than one transaction for the larger tables. */
  const SETS = BATCH + 3;
  const transactions = 2 * 4 + 4;

  test.each(['turnOn', 'turnOff'] as const)(
    'after any transaction of %s loses nothing, and the next page finishes',
    async (way) => {
      let boundaries = 0;
      for (let goes = 0; goes < transactions; goes += 1) {
        const { browser, page, lock, before } = await filled(SETS);
        if (way === 'turnOff') wentWell(await lock.turnOn(PASSPHRASE));
        let told_ = 0;
        const broken = await lock[way](PASSPHRASE, () => {
          if (told_ === goes) {
            boundaries += 1;
            throw new Error('the page goes away');
          }
          told_ += 1;
        });
        page.crash();
        if (broken.ok) break;
        const next = await unlocked(browser.page());
        expect(await told(next.store)).toEqual(before);
        expect(next.lock.state()).toBe(way === 'turnOn' ? 'open' : 'off');
        const { lock: lockRows, ...rows } = await rawRows(page.indexedDB);
        expect(lockRows).toHaveLength(way === 'turnOn' ? 1 : 0);
        expect(new Set(Object.values(rows).flatMap((all) => all.map((row) => 'sealed' in row)))).toEqual(
          new Set([way === 'turnOn']),
        );
      }
      expect(boundaries).toBeGreaterThan(8);
    },
  );

  test('in the middle of a transaction, as on a full disk, loses nothing; the page goes on, and finishes later', async () => {
    const { page, lock, store, before } = await filled(5);
    let puts = 0;
    const original = IDBObjectStore.prototype.put;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...args) {
      puts += 1;
      if (puts > 12) throw new DOMException('the quota is used up', 'QuotaExceededError');
      return original.apply(this, args as Parameters<typeof original>);
    });
    expect(await lock.turnOn(PASSPHRASE)).toEqual({ ok: false, error: { kind: 'store-full' } });
    expect(lock.state()).toBe('part');
    vi.restoreAllMocks();
    expect(await told(store)).toEqual(before);
    const kinds = async () =>
      new Set(Object.values(await rawRows(page.indexedDB)).flatMap((all) => all.map((row) => 'sealed' in row)));
    expect(await kinds()).toEqual(new Set([true, false]));
    wentWell(await lock.finish());
    expect(lock.state()).toBe('open');
    const { lock: _, ...rows } = await rawRows(page.indexedDB);
    expect(
      Object.values(rows)
        .flat()
        .every((row) => 'sealed' in row),
    ).toBe(true);
    expect(await told(store)).toEqual(before);
  });
});

test('what is damaged is told of as damaged, hides nothing else, and can be removed', async () => {
  const { page, lock, store } = await filled(4);
  wentWell(await lock.turnOn(PASSPHRASE));
  const rows = await rawRows(page.indexedDB);
  const spoiled = (table: string, n: number) => {
    const row = rows[table]?.[n] ?? {};
    const sealed = new Uint8Array(row.sealed as Uint8Array);
    sealed[40] = (sealed[40] ?? 0) ^ 1;
    return { ...row, sealed };
  };
  await putRaw(page.indexedDB, 'sets', spoiled('sets', 0));
  await putRaw(page.indexedDB, 'results', spoiled('results', 1));
  await putRaw(page.indexedDB, 'reps', spoiled('reps', 6));
  const own = (rows.diary ?? []).filter(({ person }) => person === 'me');
  await putRaw(
    page.indexedDB,
    'diary',
    spoiled(
      'diary',
      (rows.diary ?? []).findIndex(({ id }) => id === own[0]?.id),
    ),
  );
  const { sets, damaged } = wentWell(await store.list({ limit: 9 }));
  expect(damaged.map(({ id }) => id)).toEqual([idOf(3), idOf(2), idOf(1)]);
  expect(sets.map(({ id }) => id)).toEqual([idOf(4)]);
  const diary = wentWell(await store.diary.all());
  expect(diary.damaged).toMatchObject([{ id: own[0]?.id }]);
  expect(diary.entries).toHaveLength(own.length - 1);
  // Turning it off leaves them as damaged as they were.
  wentWell(await lock.turnOff(PASSPHRASE));
  expect(wentWell(await store.list({ limit: 9 })).damaged.map(({ id }) => id)).toEqual([idOf(3), idOf(2), idOf(1)]);
  for (const n of [1, 2, 3]) wentWell(await store.remove(idOf(n), removedAt));
  expect(wentWell(await store.list({ limit: 9 })).damaged).toEqual([]);
});

test('two results that have changed places are both damaged', async () => {
  const { page, lock, store } = await filled(2);
  wentWell(await lock.turnOn(PASSPHRASE));
  const [one, other] = (await rawRows(page.indexedDB)).results ?? [];
  await putRaw(page.indexedDB, 'results', { ...one, setId: other?.setId });
  await putRaw(page.indexedDB, 'results', { ...other, setId: one?.setId });
  expect(wentWell(await store.list({ limit: 9 })).damaged).toHaveLength(2);
});

describe('the lock’s own row', () => {
  test.each([
    ['rounds that would take days', { kdf: { name: 'PBKDF2', hash: 'SHA-256', rounds: 4e9, salt: new Uint8Array(16) } }],
    ['another derivation', { kdf: { name: 'PBKDF2', hash: 'SHA-1', rounds: 1e6, salt: new Uint8Array(16) } }],
    ['a key cut short', { wrapped: { iv: new Uint8Array(12), bytes: new Uint8Array(20) } }],
    ['a state that does not exist', { state: 'ajar' }],
  ])('with %s is told as damaged', async (_, change) => {
    const { browser, page, lock } = await filled(1);
    wentWell(await lock.turnOn(PASSPHRASE));
    page.crash();
    await putRaw(page.indexedDB, 'lock', { ...(await rawRows(page.indexedDB)).lock?.[0], ...change });
    const next = await opened(browser.page());
    expect(next.lock.state()).toBe('locked');
    expect(await next.lock.unlock(PASSPHRASE)).toMatchObject({ ok: false, error: { kind: 'lock-damaged' } });
  });

  test('with fewer rounds than it was made with opens nothing', async () => {
    const { browser, page, lock } = await filled(1);
    wentWell(await lock.turnOn(PASSPHRASE));
    page.crash();
    const [row] = (await rawRows(page.indexedDB)).lock ?? [];
    await putRaw(page.indexedDB, 'lock', { ...row, kdf: { ...(row?.kdf as object), rounds: FEW_ROUNDS + 1 } });
    expect(await (await opened(browser.page())).lock.unlock(PASSPHRASE)).toEqual({ ok: false, error: { kind: 'lock-wrong' } });
  });
});
