import { describe, expect, test } from 'vitest';
import { openSetStore } from '../../../src/record/open-store.ts';
import { fakeBrowser } from '../fake-browser.ts';
import { edit, header, idOf, momentOf, removedAt, rep } from '../set-builders.ts';
import { wentWell } from '../went-well.ts';
import { filled, opened, unlocked } from './locked-pages.ts';
import { FEW_ROUNDS, PASSPHRASE } from './opened-with-lock.ts';
import { type RawRows, rawRows, readableIn } from './raw-rows.ts';
import { fill, told } from './seeded-store.ts';

const OTHER = 'nine green frogs';
const wrong = { ok: false, error: { kind: 'lock-wrong' } };

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
