/** A disk without room at every write there is: nothing half-written, all of it still in the page or in its file, and stored once there is room. */
import { IDBObjectStore } from 'fake-indexeddb';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { readRecord } from '../../src/record/file/read-record.ts';
import { openSetStore } from '../../src/record/open-store.ts';
import { SELF } from '../../src/record/person.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { fail, ok } from '../../src/result.ts';
import { diaryServices } from '../../src/screens/adapter/diary.ts';
import { storedSets, type UnstoredSets } from '../../src/screens/adapter/stored-sets.ts';
import { fakeBrowser } from '../record/fake-browser.ts';
import { recordOf, someEntries, someSets, WHOSE } from '../record/file/written-record.ts';
import { edit, header, idOf, momentOf, rep, result } from '../record/set-builders.ts';
import { wentWell } from '../record/went-well.ts';
import { report } from '../symptoms/told.ts';

const full = () => {
  throw new DOMException('the quota is used up', 'QuotaExceededError');
};
/** From the `n`th write on, counted from 0, there is no room. */
function noRoomFrom(n: number) {
  let writes = 0;
  for (const call of ['put', 'add'] as const) {
    const real = IDBObjectStore.prototype[call];
    vi.spyOn(IDBObjectStore.prototype, call).mockImplementation(function (this: IDBObjectStore, ...args) {
      writes += 1;
      return writes > n ? full() : real.apply(this, args as Parameters<typeof real>);
    });
  }
}
afterEach(() => vi.restoreAllMocks());

const reps = [rep(1), rep(2)];
const measured: StoredSet = { ...header(), state: 'finished', reps, result: result(reps), edits: [edit({ kind: 'add' })] };
const link = { ...report(5, 9), id: idOf(70) };

async function page() {
  const store = wentWell(await openSetStore(fakeBrowser().page()));
  const unstored: UnstoredSets = new Map([[measured.id, { set: measured, link: [link] }]]);
  const opening = Promise.resolve(ok(store));
  return { store, unstored, services: storedSets(opening, unstored, SELF), diary: diaryServices(opening) };
}

describe('a set that found no room', () => {
  test('stays in the page and in its list, is told of in a sentence, and is stored with all its changes once there is room', async () => {
    const { services, store } = await page();
    noRoomFrom(0);
    expect(await services.store(measured.id)).toEqual(fail({ kind: 'store-full' }));
    const listed = wentWell(await services.sets());
    expect(listed.sets.map(({ id, onDisk }) => [id, onDisk])).toEqual([[measured.id, false]]);
    const changed = wentWell(await services.change(measured.id, { kind: 'strike', rep: { kind: 'measured', number: 1 } }));
    expect(changed.edits.length).toBe(2);
    vi.restoreAllMocks();
    expect(wentWell(await services.store(measured.id))).toEqual({ ...changed, onDisk: true });
    expect(wentWell(await store.read(measured.id)).edits).toEqual(changed.edits);
    expect(wentWell(await store.diary.all()).entries).toEqual([link]);
  });

  test('at whichever write: what is there is whole or absent, and trying again brings all of it', async () => {
    for (let n = 0; n < 6; n += 1) {
      const { services, store, unstored } = await page();
      noRoomFrom(n);
      const tried = await services.store(measured.id);
      vi.restoreAllMocks();
      const { sets, damaged } = wentWell(await store.list({ limit: 9 }));
      expect(damaged).toEqual([]);
      for (const set of sets) expect(set.reps).toEqual(reps);
      expect(unstored.has(measured.id)).toBe(!tried.ok);
      expect(wentWell(await services.store(measured.id))).toEqual({ ...measured, onDisk: true });
      expect(wentWell(await store.diary.all()).entries).toEqual([link]);
    }
  });

  test('is saved as a record file that can be taken in again', async () => {
    const { services } = await page();
    noRoomFrom(0);
    const file = wentWell(await services.fileOf(measured.id));
    vi.restoreAllMocks();
    const record = wentWell(await readRecord(new Uint8Array(await file.arrayBuffer()), null, crypto));
    const later = wentWell(await openSetStore(fakeBrowser().page()));
    wentWell(await (await later.records()).taken({ kind: 'here', person: SELF }, record));
    const { result: back, ...whole } = wentWell(await later.read(measured.id));
    const { result: gone, ...before } = measured;
    expect(whole).toEqual(before);
    // The file rounds the times of the curve.
    expect({ ...back, curve: null }).toEqual({ ...gone, curve: null });
  });
});

test('entries are all there or none, at whichever write, and go in once there is room', async () => {
  const entries = [report(3, 9), report(3, 10), report(4, 9)];
  for (let n = 0; n < entries.length; n += 1) {
    const { diary, store } = await page();
    noRoomFrom(n);
    expect(await diary.add(entries)).toEqual(fail({ kind: 'store-full' }));
    vi.restoreAllMocks();
    expect(wentWell(await store.diary.all()).entries).toEqual([]);
    expect(await diary.add(entries)).toEqual(ok(null));
    expect(wentWell(await store.diary.all()).entries).toHaveLength(entries.length);
  }
});

test('a record is taken in whole or not at all, at whichever write', async () => {
  const record = await recordOf(someSets(), someEntries(), { ...WHOSE, ids: [idOf(901)] });
  const person = {
    id: idOf(800),
    schema: 1,
    name: 'Ana Ejemplo (invented)',
    affectedSide: null,
    notes: '',
    addedAt: momentOf(1),
    changedAt: momentOf(1),
    seenUntil: null,
  } as const;
  let refused = 0;
  for (let n = 0; n < 20; n += 1) {
    const { store } = await page();
    const before = wentWell(await store.rows());
    noRoomFrom(n);
    const taken = await (await store.records()).taken({ kind: 'new', person }, record);
    vi.restoreAllMocks();
    if (taken.ok) break;
    refused += 1;
    expect(taken).toEqual(fail({ kind: 'store-full' }));
    expect(wentWell(await store.rows())).toEqual(before);
    wentWell(await (await store.records()).taken({ kind: 'new', person }, record));
  }
  expect(refused).toBeGreaterThan(4);
});
