import { IDBObjectStore } from 'fake-indexeddb';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { BATCH } from '../../../src/record/lock/rewrite-rows.ts';
import type { StoreLock } from '../../../src/record/lock/store-lock.ts';
import { openLockableStore, openSetStore } from '../../../src/record/open-store.ts';
import type { Store } from '../../../src/record/store.ts';
import { type FakePage, fakeBrowser } from '../fake-browser.ts';
import { edit, header, idOf, momentOf, removedAt, rep } from '../set-builders.ts';
import { wentWell } from '../went-well.ts';
import { FEW_ROUNDS, PASSPHRASE } from './opened-with-lock.ts';
import { putRaw, type RawRows, rawRows, readableIn } from './raw-rows.ts';
import { fill, told } from './seeded-store.ts';

afterEach(() => {
  vi.restoreAllMocks();
});

const OTHER = 'nine green frogs';
const wrong = { ok: false, error: { kind: 'lock-wrong' } };

const opened = async (page: FakePage) => wentWell(await openLockableStore(page, undefined, FEW_ROUNDS));
const unlocked = async (
  page: FakePage,
  passphrase = PASSPHRASE,
): Promise<{ readonly lock: StoreLock; readonly store: Store }> => {
  const { lock, store } = await opened(page);
  wentWell(await lock.unlock(passphrase));
  return { lock, store: wentWell(await store) };
};

/** A page with a filled store, its lock still off. */
async function filled(sets = 3) {
  const browser = fakeBrowser();
  const page = browser.page();
  const { lock, store } = await opened(page);
  const open = wentWell(await store);
  await fill(open, sets);
  return { browser, page, lock, store: open, before: await told(open) };
}

/** The parts of every row that may stay readable, by table; the lock's own row aside. */
const READABLE: Readonly<Record<string, readonly string[]>> = {
  people: ['id'],
  facts: ['person'],
  sets: ['id', 'person', 'startedAt', 'state'],
  reps: ['setId', 'number'],
  results: ['setId'],
  edits: ['seq', 'id', 'setId'],
  diary: ['id', 'person', 'day', 'origin'],
};

/** Every text of three characters and more and every broken number in a value. */
function leavesOf(value: unknown): readonly (string | number)[] {
  if (typeof value === 'string') return value.length >= 3 ? [value] : [];
  if (typeof value === 'number') return Number.isInteger(value) ? [] : [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(leavesOf) : [];
}

/** What a lock must hide of plain rows: what stands in no readable part. */
function secretsOf(rows: RawRows): ReadonlySet<string | number> {
  const [hidden, shown] = [
    new Set<string | number>(),
    new Set<string | number>(['people', 'facts', 'sets', 'reps', 'edits', 'results', 'diary']),
  ];
  for (const [table, all] of Object.entries(rows)) {
    for (const row of all) {
      for (const [name, value] of Object.entries(row)) {
        const into = READABLE[table]?.includes(name) ? shown : hidden;
        for (const leaf of leavesOf(value)) into.add(leaf);
      }
    }
  }
  return new Set([...hidden].filter((leaf) => ![...shown].some((each) => String(each).includes(String(leaf)))));
}

describe('a lock that is turned on', () => {
  test('leaves nothing readable in the database but what keys and indexes need, and the store tells the same', async () => {
    const { page, lock, store, before } = await filled();
    const plain = await rawRows(page.indexedDB);
    const secrets = secretsOf(plain);
    expect(secrets.size).toBeGreaterThan(40);
    expect(secrets).toContain('Wilma Beispiel (invented)');
    expect(secrets).toContain('kitchen 1.mp4');
    expect(secrets).toContain('the doctor at the corner said go on');
    // The search finds every one of them while the lock is off.
    expect(readableIn(plain, secrets)).toHaveLength(secrets.size);

    const shares: number[] = [];
    wentWell(await lock.turnOn(PASSPHRASE, (share) => shares.push(share)));
    expect(shares.at(-1)).toBe(1);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(lock.state()).toBe('open');
    const { lock: lockRows, ...sealed } = await rawRows(page.indexedDB);
    expect(readableIn({ ...sealed, lock: lockRows ?? [] }, [...secrets, PASSPHRASE])).toEqual([]);
    for (const [table, rows] of Object.entries(sealed)) {
      expect(rows.length).toBe(plain[table]?.length);
      for (const row of rows) expect(Object.keys(row).sort()).toEqual([...(READABLE[table] ?? []), 'sealed'].sort());
    }
    expect(lockRows).toMatchObject([{ id: 'lock', state: 'on', kdf: { name: 'PBKDF2', rounds: FEW_ROUNDS } }]);
    expect(await told(store)).toEqual(before);
  });

  test('seals what is written from then on, too', async () => {
    const { page, lock, store } = await filled(1);
    wentWell(await lock.turnOn(PASSPHRASE));
    await fill(store, 2);
    const { lock: _, ...rows } = await rawRows(page.indexedDB);
    for (const row of Object.values(rows).flat()) expect(row.sealed).toBeInstanceOf(Uint8Array);
  });

  test('keeps the page that comes next out until the passphrase is right', async () => {
    const { browser, page, lock, before } = await filled();
    wentWell(await lock.turnOn(PASSPHRASE));
    page.crash();
    const next = await opened(browser.page());
    expect(next.lock.state()).toBe('locked');
    expect(await openSetStore(browser.page())).toEqual({ ok: false, error: { kind: 'store-locked' } });
    for (const passphrase of ['', OTHER, `${PASSPHRASE} `, PASSPHRASE.toUpperCase()]) {
      expect(await next.lock.unlock(passphrase)).toEqual(wrong);
      expect(next.lock.state()).toBe('locked');
    }
    wentWell(await next.lock.unlock(PASSPHRASE));
    expect(next.lock.state()).toBe('open');
    expect(await told(wentWell(await next.store))).toEqual(before);
  });

  test('marks a set whose page closed as interrupted once it is unlocked', async () => {
    const { browser, page, lock, store } = await filled(1);
    wentWell(await lock.turnOn(PASSPHRASE));
    const head = header({ id: idOf(50), startedAt: momentOf(50) });
    wentWell(await store.begin(head));
    wentWell(await store.append(head, [rep(1)]));
    page.crash();
    const { store: next } = await unlocked(browser.page());
    expect(wentWell(await next.read(idOf(50)))).toMatchObject({ state: 'interrupted', reps: [rep(1)] });
  });

  test('lets nobody read or write after it was locked again, until it is unlocked', async () => {
    const { page, lock, store, before } = await filled();
    wentWell(await lock.turnOn(PASSPHRASE));
    lock.lockNow();
    const rows = await rawRows(page.indexedDB);
    const locked = { ok: false, error: { kind: 'store-locked' } };
    expect(await store.list({ limit: 9 })).toEqual(locked);
    expect(await store.edit(edit({ kind: 'add' }))).toEqual(locked);
    expect(await store.append(header(), [rep(1)])).toEqual(locked);
    expect(await store.remove(idOf(1), removedAt)).toEqual(locked);
    expect(await store.diary.all()).toEqual(locked);
    expect(await store.diary.removeExamples()).toEqual(locked);
    expect(await rawRows(page.indexedDB)).toEqual(rows);
    wentWell(await lock.unlock(PASSPHRASE));
    expect(await told(store)).toEqual(before);
  });

  test('wants a passphrase of eight characters, as people count them', async () => {
    const { page, lock } = await filled(1);
    const before = await rawRows(page.indexedDB);
    for (const short of ['', '1234567', '🦶🦶🦶🦶']) {
      expect(await lock.turnOn(short)).toEqual({ ok: false, error: { kind: 'lock-short' } });
    }
    expect(await rawRows(page.indexedDB)).toEqual(before);
    wentWell(await lock.turnOn('🦶🦶🦶🦶🦶🦶🦶🦶'));
  });
});

test('another passphrase opens the same rows, and the old one no more', async () => {
  const { browser, page, lock, before } = await filled();
  wentWell(await lock.turnOn(PASSPHRASE));
  const { lock: _, ...rows } = await rawRows(page.indexedDB);
  expect(await lock.change(OTHER, PASSPHRASE)).toEqual(wrong);
  expect(await lock.change(PASSPHRASE, 'short')).toEqual({ ok: false, error: { kind: 'lock-short' } });
  wentWell(await lock.change(PASSPHRASE, OTHER));
  expect(await rawRows(page.indexedDB)).toMatchObject(rows);
  page.crash();
  const next = await opened(browser.page());
  expect(await next.lock.unlock(PASSPHRASE)).toEqual(wrong);
  wentWell(await next.lock.unlock(OTHER));
  expect(await told(wentWell(await next.store))).toEqual(before);
});

test('turned off with the passphrase, every row lies there as before it was on', async () => {
  const { browser, page, lock, store, before } = await filled();
  const plain = await rawRows(page.indexedDB);
  wentWell(await lock.turnOn(PASSPHRASE));
  expect(await lock.turnOff(OTHER)).toEqual(wrong);
  expect(lock.state()).toBe('open');
  wentWell(await lock.turnOff(PASSPHRASE));
  expect(lock.state()).toBe('off');
  expect(await rawRows(page.indexedDB)).toEqual(plain);
  expect(await told(store)).toEqual(before);
  page.crash();
  expect(await told(wentWell(await openSetStore(browser.page())))).toEqual(before);
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

describe('other pages', () => {
  const others = { ok: false, error: { kind: 'lock-other-tabs' } };

  test('keep the lock from being turned on or off and all from being erased; nothing changes', async () => {
    const { browser, page, lock, store, before } = await filled(1);
    const other = browser.page();
    await opened(other);
    const rows = await rawRows(page.indexedDB);
    expect(await lock.turnOn(PASSPHRASE)).toEqual(others);
    expect(await lock.erase()).toEqual(others);
    expect(await rawRows(page.indexedDB)).toEqual(rows);
    expect(await told(store)).toEqual(before);
    other.crash();
    wentWell(await lock.turnOn(PASSPHRASE));
    await opened(browser.page());
    expect(await lock.turnOff(PASSPHRASE)).toEqual(others);
    expect(await told(store)).toEqual(before);
  });

  test('that come while it is turned on wait for it, and find it on', async () => {
    const { browser, lock } = await filled(1);
    let coming: ReturnType<typeof opened> | null = null;
    const done = await lock.turnOn(PASSPHRASE, () => {
      coming ??= opened(browser.page());
    });
    wentWell(done);
    expect((await (coming as unknown as ReturnType<typeof opened>)).lock.state()).toBe('locked');
  });

  test('both at once: one turns it on, the other is told', async () => {
    const browser = fakeBrowser();
    const [one, other] = [await opened(browser.page()), await opened(browser.page())];
    const done = await Promise.all([one.lock.turnOn(PASSPHRASE), other.lock.turnOn(OTHER)]);
    const [first, second] = done[0]?.ok ? [one, other] : [other, one];
    expect(done.filter(({ ok }) => ok)).toHaveLength(1);
    expect(done.find(({ ok }) => !ok)).toMatchObject({ error: { kind: 'lock-changed' } });
    expect([first.lock.state(), second.lock.state()]).toEqual(['open', 'stale']);
    expect(await wentWell(await second.store).list({ limit: 1 })).toEqual({ ok: false, error: { kind: 'store-locked' } });
  });

  test('that have unlocked it too read what the other writes', async () => {
    const { browser, lock, store } = await filled(1);
    wentWell(await lock.turnOn(PASSPHRASE));
    const { store: there } = await unlocked(browser.page());
    wentWell(await there.edit({ ...edit({ kind: 'add' }), note: 'from there' }));
    expect(wentWell(await store.read(idOf(1))).edits.map(({ note }) => note)).toContain('from there');
  });
});

test('while a set runs the lock is neither turned on nor off', async () => {
  const { lock, store } = await filled(1);
  const running = { ok: false, error: { kind: 'lock-set-running' } };
  const head = header({ id: idOf(50) });
  wentWell(await store.begin(head));
  expect(await lock.turnOn(PASSPHRASE)).toEqual(running);
  wentWell(await store.end(head, { state: 'finished', result: null }));
  wentWell(await lock.turnOn(PASSPHRASE));
  wentWell(await store.begin(header({ id: idOf(51) })));
  expect(await lock.turnOff(PASSPHRASE)).toEqual(running);
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
    expect(await (await opened(browser.page())).lock.unlock(PASSPHRASE)).toEqual(wrong);
  });
});

test('erasing deletes the database, locked or not, and the next page begins anew', async () => {
  const { browser, page, lock } = await filled(2);
  wentWell(await lock.turnOn(PASSPHRASE));
  page.crash();
  const locked = browser.page();
  const next = await opened(locked);
  wentWell(await next.lock.erase());
  expect(await locked.indexedDB.databases()).toEqual([]);
  expect(next.lock.state()).toBe('stale');
  locked.crash();
  const anew = await opened(browser.page());
  expect(anew.lock.state()).toBe('off');
  expect(await told(wentWell(await anew.store))).toEqual({
    sets: [],
    damaged: [],
    diary: { entries: [], damaged: [] },
    people: { people: [], damaged: [] },
  });
});
