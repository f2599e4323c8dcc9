import { IDBObjectStore } from 'fake-indexeddb';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { database, VERSIONS } from '../../src/record/database.ts';
import { readRecord } from '../../src/record/file/read-record.ts';
import { openSetStore } from '../../src/record/open-store.ts';
import { type Person, SELF } from '../../src/record/person.ts';
import type { Store } from '../../src/record/store.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { dayOf, entry, report } from '../symptoms/told.ts';
import { fakeBrowser } from './fake-browser.ts';
import { someEntries, someSets, written } from './file/written-record.ts';
import { header, idOf, removedAt, rep, result } from './set-builders.ts';
import { wentWell } from './went-well.ts';

const opened = async (): Promise<Store> => wentWell(await openSetStore(fakeBrowser().page()));
const ina: Person = {
  id: idOf(800),
  schema: 1,
  name: 'Ina Invented',
  affectedSide: 'left',
  notes: 'Only for me: came late twice.',
  addedAt: '2026-05-01T08:00:00.000Z',
  changedAt: '2026-05-01T08:00:00.000Z',
  seenUntil: null,
};
const handSet = (n: number) =>
  ({ ...entry(n, 9), kind: 'hand-set', exercise: 'foot-tap', side: 'left', itemId: null, reps: 9, counted: 'by-hand' }) as const;

/** The record of this store's own person, as a file would carry it. */
async function recordOf(store: Store) {
  const [{ sets }, { entries }] = [wentWell(await store.list({ limit: 99 })), wentWell(await store.diary.all())];
  return wentWell(await readRecord(await written(sets, entries), null, crypto));
}
const taken = async (store: Store, person: string, from: Store) =>
  wentWell(await (await store.records()).taken({ kind: 'here', person }, await recordOf(from)));
const ids = (sets: readonly StoredSet[]) => sets.map(({ id }) => id);
const setsOf = async (store: Store, person: string) => ids(wentWell(await store.of(person).list({ limit: 99 })).sets);

/** A patient with two sets, of which the therapist has a copy. */
async function patientAndTherapist() {
  const [patient, therapist] = [await opened(), await opened()];
  for (const n of [1, 2]) wentWell(await patient.end(header({ id: idOf(n) }), { state: 'finished', result: result([rep(1)]) }));
  wentWell(await therapist.people.save(ina));
  await taken(therapist, ina.id, patient);
  return { patient, therapist };
}

afterEach(() => {
  vi.restoreAllMocks();
});

describe('a set that was removed', () => {
  test('does not come back with a file that still has it', async () => {
    const { patient, therapist } = await patientAndTherapist();
    const before = await recordOf(patient);
    wentWell(await patient.remove(idOf(1), removedAt));
    const again = wentWell(await (await patient.records()).taken({ kind: 'here', person: SELF }, before));
    expect(again).toMatchObject({ sets: { fresh: 0, same: 1 }, conflicts: 0, removed: { here: 0, coming: 1 } });
    expect(await setsOf(patient, SELF)).toEqual([idOf(2)]);
    expect(await setsOf(therapist, ina.id)).toHaveLength(2);
  });

  test('goes with the next record where a copy of it was, and leaves who reads it the day and what it was', async () => {
    const { patient, therapist } = await patientAndTherapist();
    wentWell(await patient.remove(idOf(1), removedAt));
    expect(await taken(therapist, ina.id, patient)).toMatchObject({ removed: { here: 1, coming: 0 } });
    expect(await setsOf(therapist, ina.id)).toEqual([idOf(2)]);
    const { log } = wentWell(await therapist.of(ina.id).diary.log(dayOf(1), 'UTC'));
    expect(log.removals).toMatchObject([
      { recordId: idOf(1), of: 'set', ...removedAt, what: { exercise: 'foot-tap', side: 'left', doneAt: header().startedAt } },
    ]);
    // The same once more changes nothing.
    expect(await taken(therapist, ina.id, patient)).toMatchObject({ removed: { here: 0, coming: 0 }, entries: { fresh: 0 } });
  });

  test('stays removed on both sides whichever copy comes first, and when the therapist’s copy comes back', async () => {
    const { patient, therapist } = await patientAndTherapist();
    const old = await recordOf(patient);
    wentWell(await patient.remove(idOf(1), removedAt));
    const late = await opened();
    wentWell(await late.people.save(ina));
    await taken(late, ina.id, patient);
    wentWell(await (await late.records()).taken({ kind: 'here', person: ina.id }, old));
    wentWell(await (await therapist.records()).taken({ kind: 'here', person: ina.id }, await recordOf(patient)));
    expect(await setsOf(late, ina.id)).toEqual(await setsOf(therapist, ina.id));
  });

  test('counted by hand stays removed, too', async () => {
    const { patient, therapist } = await patientAndTherapist();
    const [slip, kept] = [handSet(2), handSet(3)];
    wentWell(await patient.diary.add([slip, kept]));
    await taken(therapist, ina.id, patient);
    wentWell(await patient.diary.removeHandSet(slip.id, removedAt));
    expect(await taken(therapist, ina.id, patient)).toMatchObject({ removed: { here: 1 } });
    const there = wentWell(await therapist.of(ina.id).diary.all()).entries.filter(({ kind }) => kind === 'hand-set');
    expect(there).toEqual([kept]);
  });

  test('takes nothing else along: not another person’s set, and nothing that was told of symptoms', async () => {
    const { patient, therapist } = await patientAndTherapist();
    wentWell(await therapist.end(header({ id: idOf(7) }), { state: 'finished', result: result([rep(1)]) }));
    const told = report(4, 9);
    wentWell(await therapist.of(ina.id).diary.add([told]));
    const claims = [idOf(7), told.id].map((recordId, i) => ({
      ...entry(5, 9 + i),
      kind: 'removal' as const,
      recordId,
      of: 'set' as const,
      what: null,
    }));
    wentWell(await patient.diary.add(claims));
    expect(await taken(therapist, ina.id, patient)).toMatchObject({ removed: { here: 0 } });
    expect(await setsOf(therapist, SELF)).toEqual([idOf(7)]);
    expect(wentWell(await therapist.of(ina.id).diary.all()).entries).toContainEqual(told);
  });

  test('can be removed on a full disk', async () => {
    const { patient } = await patientAndTherapist();
    const add = IDBObjectStore.prototype.add;
    vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(function (this: IDBObjectStore, ...args: unknown[]) {
      if (this.name === 'diary') throw new DOMException('the quota is used up', 'QuotaExceededError');
      return add.apply(this, args as never) as never;
    } as never);
    wentWell(await patient.remove(idOf(1), removedAt));
    vi.restoreAllMocks();
    expect(await setsOf(patient, SELF)).toEqual([idOf(2)]);
  });

  test('that was an example leaves no trace', async () => {
    const store = await opened();
    wentWell(await store.end(header({ source: 'example' }), { state: 'finished', result: result([rep(1)]) }));
    wentWell(await store.remove(idOf(1), removedAt));
    expect(wentWell(await store.diary.all()).entries).toEqual([]);
  });
});

test('a whole person who was removed leaves no trace, and can be taken in again', async () => {
  const { patient, therapist } = await patientAndTherapist();
  wentWell(await therapist.people.remove(ina.id));
  wentWell(await therapist.people.save(ina));
  await taken(therapist, ina.id, patient);
  expect(await setsOf(therapist, ina.id)).toHaveLength(2);
});

test('a file of which nothing was removed can be read by the program of before; one with removals says that it is newer', async () => {
  const { patient } = await patientAndTherapist();
  expect((await recordOf(patient)).manifest.version).toBe(1);
  wentWell(await patient.remove(idOf(1), removedAt));
  expect((await recordOf(patient)).manifest.version).toBe(2);
});

test('what was stored before removals were is all there, and a set of it can be removed for good', async () => {
  const page = fakeBrowser().page();
  const before = database(
    page,
    VERSIONS.filter(({ version }) => version < 12),
  );
  await before.open();
  await before.sets.bulkAdd(someSets().map(({ reps: _, result: __, edits: ___, ...row }) => row));
  await before.results.bulkAdd(someSets().flatMap(({ id, result: found }) => (found ? [{ setId: id, result: found }] : [])));
  await before.diary.bulkAdd(someEntries().map((told) => ({ ...told, person: SELF })));
  before.close();
  const store = wentWell(await openSetStore(page));
  const [first] = wentWell(await store.list({ limit: 99 })).sets;
  expect(wentWell(await store.diary.all()).entries).toHaveLength(someEntries().length);
  wentWell(await store.remove(first?.id ?? '', removedAt));
  expect(await setsOf(store, SELF)).not.toContain(first?.id);
  expect(wentWell(await store.diary.all()).entries.at(-1)).toMatchObject({ kind: 'removal', recordId: first?.id });
});
