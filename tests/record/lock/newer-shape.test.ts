import { IDBObjectStore } from 'fake-indexeddb';
import { afterEach, expect, test, vi } from 'vitest';
import { type DatabaseVersion, newestOf, VERSIONS } from '../../../src/record/database.ts';
import { openLockableStore } from '../../../src/record/open-store.ts';
import { fakeBrowser } from '../fake-browser.ts';
import { header, idOf, rep, result } from '../set-builders.ts';
import { wentWell } from '../went-well.ts';
import { FEW_ROUNDS, PASSPHRASE } from './opened-with-lock.ts';
import { putRaw, rawRows } from './raw-rows.ts';
import { fill } from './seeded-store.ts';

afterEach(() => {
  vi.restoreAllMocks();
});

/** A later version that changes rows and has one more index. */
const NEXT: readonly DatabaseVersion[] = [
  ...VERSIONS,
  {
    version: newestOf(VERSIONS) + 1,
    stores: { sets: `${VERSIONS.findLast(({ stores }) => 'sets' in stores)?.stores.sets}, model` },
    upgrade: { sets: (row) => ({ ...(row as object), model: 'heavy' }) },
  },
];

async function lockedBrowser() {
  const browser = fakeBrowser();
  const page = browser.page();
  const { lock, store } = wentWell(await openLockableStore(page, VERSIONS, FEW_ROUNDS));
  await fill(wentWell(await store), 2);
  wentWell(await lock.turnOn(PASSPHRASE));
  wentWell(await store).close();
  return browser;
}

test('a newer version of the program changes sealed rows when they are unlocked, and then finds them by its new index', async () => {
  const browser = await lockedBrowser();
  const page = browser.page();
  const { lock, store } = wentWell(await openLockableStore(page, NEXT, FEW_ROUNDS));
  expect((await rawRows(page.indexedDB)).sets?.map((row) => Object.keys(row).includes('model'))).toEqual([false, false]);
  wentWell(await lock.unlock(PASSPHRASE));
  expect(wentWell(await wentWell(await store).list({ limit: 9 })).sets.map(({ model }) => model)).toEqual(['heavy', 'heavy']);
  const { sets, lock: rows } = await rawRows(page.indexedDB);
  expect(sets?.map(({ model, sealed }) => [model, sealed instanceof Uint8Array])).toEqual([
    ['heavy', true],
    ['heavy', true],
  ]);
  expect(rows).toMatchObject([{ state: 'on', version: newestOf(NEXT) }]);
});

test('and stays locked where the disk has no room for that', async () => {
  const browser = await lockedBrowser();
  const { lock } = wentWell(await openLockableStore(browser.page(), NEXT, FEW_ROUNDS));
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
    throw new DOMException('the quota is used up', 'QuotaExceededError');
  });
  expect(await lock.unlock(PASSPHRASE)).toEqual({ ok: false, error: { kind: 'store-full' } });
  expect(lock.state()).toBe('locked');
  vi.restoreAllMocks();
  wentWell(await lock.unlock(PASSPHRASE));
  expect(lock.state()).toBe('open');
});

test('a sealed result of before there were nerve glides is read as one without, once it is unlocked', async () => {
  const browser = fakeBrowser();
  const page = browser.page();
  const before = VERSIONS.filter(({ version }) => version <= 7);
  const { lock, store } = wentWell(await openLockableStore(page, before, FEW_ROUNDS));
  const { glide: _, ...old } = result([rep(1)]);
  wentWell(await wentWell(await store).end(header(), { state: 'finished', result: result([rep(1)]) }));
  // What that version wrote had no such field.
  await putRaw(page.indexedDB, 'results', { setId: idOf(1), result: old });
  wentWell(await lock.turnOn(PASSPHRASE));
  wentWell(await store).close();
  const next = wentWell(await openLockableStore(browser.page(), VERSIONS, FEW_ROUNDS));
  wentWell(await next.lock.unlock(PASSPHRASE));
  expect(wentWell(await wentWell(await next.store).read(idOf(1))).result).toEqual({ ...old, glide: null });
});
