import { IDBDatabase, IDBObjectStore } from 'fake-indexeddb';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { type DatabaseVersion, database, VERSIONS } from '../../src/record/database.ts';
import { openSetStore } from '../../src/record/open-store.ts';
import { fakeBrowser } from './fake-browser.ts';
import { header, idOf, removedAt, rep, result } from './set-builders.ts';
import { wentWell } from './went-well.ts';

afterEach(() => {
  vi.restoreAllMocks();
});

/** The next shape of the database, as a later version of the program might have it. */
const NEXT: readonly DatabaseVersion[] = [
  ...VERSIONS,
  {
    version: (VERSIONS.at(-1)?.version ?? 0) + 1,
    stores: { notes: 'id' },
    upgrade: { sets: (row) => ({ ...(row as object), model: 'heavy' }) },
  },
];

describe('a full disk', () => {
  test('that refuses a write at once is told as such, and what was there stays', async () => {
    const store = wentWell(await openSetStore(fakeBrowser().page()));
    wentWell(await store.begin(header()));
    wentWell(await store.append(header(), [rep(1)]));
    const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('the quota is used up', 'QuotaExceededError');
    });
    expect(await store.append(header(), [rep(2)])).toEqual({ ok: false, error: { kind: 'store-full' } });
    expect(put).toHaveBeenCalled();
    put.mockRestore();
    expect(wentWell(await store.read(idOf(1))).reps).toEqual([rep(1)]);
    wentWell(await store.append(header(), [rep(2)]));
  });

  test.each(['while it is written', 'after it seemed to go well'])(
    'that shows only %s is told as such, and nothing of it is there',
    async (when) => {
      const store = wentWell(await openSetStore(fakeBrowser().page()));
      wentWell(await store.begin(header()));
      const original = IDBObjectStore.prototype.put;
      vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...args) {
        const request = original.apply(this, args as Parameters<typeof original>);
        // The engine's own way to give a transaction up, with the error that a browser gives.
        const giveUp = () => (this.transaction as unknown as { _abort: (name: string) => void })._abort('QuotaExceededError');
        if (when === 'while it is written') queueMicrotask(giveUp);
        else request.addEventListener('success', giveUp);
        return request;
      });
      expect(await store.append(header(), [rep(1)])).toEqual({ ok: false, error: { kind: 'store-full' } });
      vi.restoreAllMocks();
      expect(wentWell(await store.read(idOf(1))).reps).toEqual([]);
    },
  );

  test('does not keep sets from being read', async () => {
    const browser = fakeBrowser();
    const page = browser.page();
    const store = wentWell(await openSetStore(page));
    wentWell(await store.begin(header()));
    wentWell(await store.append(header(), [rep(1)]));
    page.crash();
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('the quota is used up', 'QuotaExceededError');
    });
    const later = wentWell(await openSetStore(browser.page()));
    expect(wentWell(await later.read(idOf(1))).reps).toEqual([rep(1)]);
  });
});

test('writes wait for the disk, not only for the system', async () => {
  const ask = vi.spyOn(IDBDatabase.prototype, 'transaction');
  const store = wentWell(await openSetStore(fakeBrowser().page()));
  wentWell(await store.begin(header()));
  wentWell(await store.append(header(), [rep(1)]));
  const writes = ask.mock.calls.filter(([, mode]) => mode === 'readwrite');
  expect(writes.length).toBeGreaterThanOrEqual(2);
  for (const [, , options] of writes) expect(options).toEqual({ durability: 'strict' });
});

describe('a browser without a usable database', () => {
  test('no database or no locks at all', async () => {
    expect(await openSetStore(null)).toMatchObject({ ok: false, error: { kind: 'store-unavailable' } });
  });

  test('a database that refuses to open, as in some private windows', async () => {
    const page = fakeBrowser().page();
    vi.spyOn(page.indexedDB, 'open').mockImplementation(() => {
      throw new DOMException(
        'A mutation operation was attempted on a database that did not allow mutations.',
        'InvalidStateError',
      );
    });
    expect(await openSetStore(page)).toMatchObject({ ok: false, error: { kind: 'store-unavailable' } });
  });
});

describe('another version of the program', () => {
  test('a newer one brings the sets along', async () => {
    const browser = fakeBrowser();
    const old = wentWell(await openSetStore(browser.page()));
    wentWell(await old.end(header(), { state: 'finished', result: result([rep(1)]) }));
    old.close();
    const now = wentWell(await openSetStore(browser.page(), NEXT));
    expect(wentWell(await now.read(idOf(1)))).toMatchObject({ model: 'heavy', reps: [rep(1)] });
  });

  test('a set of version 1, which knew neither feet nor onset, is brought along', async () => {
    const browser = fakeBrowser();
    const unknown = ['footDeg', 'footUncertaintyDeg', 'kneeLimitDeg', 'onset'];
    const asThen = <T>(value: T): T =>
      JSON.parse(JSON.stringify(value, (key, part: unknown) => (unknown.includes(key) ? undefined : part))) as T;
    const raise = { ...result([rep(1)]), exercise: 'leg-raise' } as const;
    const old = database(browser.page(), VERSIONS.slice(0, 1));
    await old.open();
    await old.table('sets').bulkAdd([
      { ...header({ exercise: 'leg-raise' }), state: 'finished' },
      { ...header({ id: idOf(2) }), state: 'running' },
    ]);
    await old.table('reps').bulkAdd([1, 2].map((n) => asThen({ setId: idOf(n), number: 1, rep: rep(1) })));
    await old.table('results').add(asThen({ setId: idOf(1), result: raise }));
    old.close();
    const now = wentWell(await openSetStore(browser.page()));
    expect(wentWell(await now.read(idOf(1))).result).toEqual({ ...raise, kneeLimitDeg: 15, onset: null });
    expect(wentWell(await now.read(idOf(2))).reps).toEqual([rep(1)]);
  });

  test('a newer one’s database is not opened by this one', async () => {
    const browser = fakeBrowser();
    wentWell(await openSetStore(browser.page(), NEXT)).close();
    expect(await openSetStore(browser.page())).toEqual({ ok: false, error: { kind: 'store-newer' } });
  });

  test('a page with no running set makes way for a newer one, and says so afterwards', async () => {
    const browser = fakeBrowser();
    const old = wentWell(await openSetStore(browser.page()));
    wentWell(await openSetStore(browser.page(), NEXT));
    expect(await old.list({ limit: 1 })).toEqual({ ok: false, error: { kind: 'store-newer' } });
    expect(await old.begin(header())).toEqual({ ok: false, error: { kind: 'store-newer' } });
  });

  test('a page in which a set runs does not make way until it has ended', async () => {
    const browser = fakeBrowser();
    const old = wentWell(await openSetStore(browser.page()));
    wentWell(await old.begin(header()));
    expect(await openSetStore(browser.page(), NEXT)).toEqual({ ok: false, error: { kind: 'store-blocked' } });
    wentWell(await old.append(header(), [rep(1)]));
    wentWell(await old.end(header(), { state: 'finished', result: result([rep(1)]) }));
    const now = wentWell(await openSetStore(browser.page(), NEXT));
    expect(wentWell(await now.read(idOf(1))).state).toBe('finished');
    expect(await old.read(idOf(1))).toEqual({ ok: false, error: { kind: 'store-newer' } });
  });
});

describe('what does not have the shape of a set', () => {
  test('is not written', async () => {
    const store = wentWell(await openSetStore(fakeBrowser().page()));
    wentWell(await store.begin(header()));
    const refused = await store.append(header(), [rep(1, { peakDeg: Number.NaN as never })]);
    expect(refused).toMatchObject({ ok: false, error: { kind: 'store-refused', what: expect.stringContaining('peakDeg') } });
    expect(wentWell(await store.read(idOf(1))).reps).toEqual([]);
  });

  test('is not taken for one when it is read, and does not hide the others', async () => {
    const page = fakeBrowser().page();
    const store = wentWell(await openSetStore(page));
    for (const id of [idOf(1), idOf(2)]) {
      wentWell(await store.end(header({ id }), { state: 'finished', result: result([rep(1)]) }));
    }
    await spoil(page.indexedDB, 'results', { setId: idOf(1), result: { ...result([]), count: 'two' } });
    const damage = { id: idOf(1), what: expect.stringMatching(/^result\.count: .*two/) };
    expect(await store.read(idOf(1))).toEqual({ ok: false, error: { kind: 'set-damaged', ...damage } });
    const page1 = wentWell(await store.list({ limit: 5 }));
    expect(page1.sets.map(({ id }) => id)).toEqual([idOf(2)]);
    expect(page1.damaged).toEqual([damage]);
    wentWell(await store.remove(idOf(1), removedAt));
    expect(wentWell(await store.list({ limit: 5 })).damaged).toEqual([]);
  });
});

/** Writes a row past the store, as a fault or another program would. */
function spoil(indexedDB: IDBFactory, table: string, row: unknown): Promise<void> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open('evenside');
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const transaction = opening.result.transaction(table, 'readwrite');
      transaction.objectStore(table).put(row);
      transaction.oncomplete = () => {
        opening.result.close();
        resolve();
      };
    };
  });
}
