import { expect, test } from 'vitest';
import { type Database, database, VERSIONS } from '../../src/record/database.ts';
import { openSetStore } from '../../src/record/open-store.ts';
import { clearance } from '../symptoms/told.ts';
import { type FakePage, fakeBrowser } from './fake-browser.ts';
import { aGlide } from './glide-builders.ts';
import { header, idOf, momentOf, rep, result } from './set-builders.ts';
import { wentWell } from './went-well.ts';

/** Fills a database of an older version as that version did, and closes it. */
async function storedBy(version: number, page: FakePage, fill: (db: Database) => Promise<unknown>): Promise<void> {
  const db = database(page, VERSIONS.slice(0, version));
  await db.open();
  await fill(db);
  db.close();
}

/** A set's row as version 1 wrote it: no dose. */
const rowOfVersion1 = (n: number, state: 'running' | 'finished') => ({
  id: idOf(n),
  schema: 1,
  startedAt: momentOf(n),
  exercise: 'foot-tap',
  side: 'left',
  person: 'me',
  source: 'file',
  fileName: 'taps.mp4',
  model: 'lite',
  state,
});

const fileHeader = (n: number) =>
  header({ id: idOf(n), startedAt: momentOf(n), source: 'file', fileName: 'taps.mp4', model: 'lite', targetReps: null });

test('sets stored before the dose was are all there, with an unknown dose, and can be edited', async () => {
  const page = fakeBrowser().page();
  await storedBy(1, page, async (db) => {
    await db.table('sets').bulkAdd([rowOfVersion1(1, 'finished'), rowOfVersion1(2, 'running')]);
    await db.reps.bulkAdd([1, 2].map((n) => ({ setId: idOf(n), number: 1, rep: rep(1) })));
    await db.results.add({ setId: idOf(1), result: result([rep(1)]) });
    await db.edits.add({ id: idOf(50), schema: 1, setId: idOf(1), at: momentOf(9), kind: 'add' });
  });
  const store = wentWell(await openSetStore(page));
  const { sets, damaged } = wentWell(await store.list({ limit: 9 }));
  expect(damaged).toEqual([]);
  expect(sets).toEqual([
    { ...fileHeader(2), state: 'interrupted', reps: [rep(1)], result: null, edits: [] },
    {
      ...fileHeader(1),
      state: 'finished',
      reps: [rep(1)],
      result: result([rep(1)]),
      edits: [{ id: idOf(50), schema: 1, setId: idOf(1), at: momentOf(9), kind: 'add' }],
    },
  ]);
  wentWell(await store.edit({ id: idOf(51), schema: 1, setId: idOf(1), at: momentOf(10), kind: 'add' }));
  expect(wentWell(await store.read(idOf(1))).edits.length).toBe(2);
});

test('a set that was damaged before stays told as damaged', async () => {
  const page = fakeBrowser().page();
  await storedBy(1, page, (db) => db.table('sets').add({ ...rowOfVersion1(1, 'finished'), schema: 'one' }));
  const store = wentWell(await openSetStore(page));
  expect(await store.read(idOf(1))).toMatchObject({
    ok: false,
    error: { kind: 'set-damaged', what: expect.stringContaining('schema') },
  });
});

test('a set stored since then keeps its dose when the database is opened again', async () => {
  const page = fakeBrowser().page();
  const first = wentWell(await openSetStore(page));
  wentWell(await first.end(header({ targetReps: 12 }), { state: 'finished', result: result([rep(1)]) }));
  first.close();
  expect(wentWell(await wentWell(await openSetStore(page)).read(idOf(1))).targetReps).toBe(12);
});

test('sets stored before the diary was stay as they are, and the diary can be written beside them', async () => {
  const page = fakeBrowser().page();
  await storedBy(4, page, async (db) => {
    await db.sets.add({ ...header(), state: 'finished' });
    await db.reps.add({ setId: idOf(1), number: 1, rep: rep(1) });
    await db.results.add({ setId: idOf(1), result: result([rep(1)]) });
  });
  const store = wentWell(await openSetStore(page));
  expect(wentWell(await store.read(idOf(1)))).toEqual({
    ...header(),
    state: 'finished',
    reps: [rep(1)],
    result: result([rep(1)]),
    edits: [],
  });
  const told = clearance(4, 9);
  wentWell(await store.diary.add([told]));
  expect(wentWell(await store.diary.read(told.day, told.day))).toEqual({ entries: [told], damaged: [] });
});

test('a diary stored before there were several people is one’s own, and is neither another person’s nor lost', async () => {
  const page = fakeBrowser().page();
  const told = [clearance(4, 9), { ...clearance(5, 9), origin: 'example' as const }];
  await storedBy(5, page, async (db) => {
    await db.table('diary').bulkAdd(told);
    await db.sets.add({ ...header(), state: 'finished' });
  });
  const store = wentWell(await openSetStore(page));
  expect(wentWell(await store.diary.all()).entries).toEqual(told);
  const other = store.of(idOf(99));
  expect(wentWell(await other.diary.all()).entries).toEqual([]);
  expect(wentWell(await other.list({ limit: 9 })).sets).toEqual([]);
  expect(wentWell(await store.list({ limit: 9 })).sets.length).toBe(1);
  expect(wentWell(await store.diary.removeExamples())).toBe(1);
});

/** A result as version 7 wrote it: nothing of foot and head together. */
function resultOfVersion7() {
  const { glide: _, ...old } = result([rep(1)]);
  return old;
}

test('results stored before there were nerve glides are all there, without one', async () => {
  const page = fakeBrowser().page();
  await storedBy(7, page, async (db) => {
    await db.sets.bulkAdd(
      [1, 2].map((n) => ({ ...header({ id: idOf(n), startedAt: momentOf(n) }), state: 'finished' as const })),
    );
    await db.table('results').add({ setId: idOf(1), result: resultOfVersion7() });
    await db.table('results').add({ setId: idOf(2), result: 'not a result' });
  });
  const store = wentWell(await openSetStore(page));
  expect(wentWell(await store.read(idOf(1))).result).toEqual({ ...resultOfVersion7(), glide: null });
  expect(await store.read(idOf(2))).toMatchObject({ ok: false, error: { kind: 'set-damaged' } });
});

test('what foot and head did stays when the database is opened again', async () => {
  const page = fakeBrowser().page();
  const first = wentWell(await openSetStore(page));
  const glided = { ...result([rep(1)]), exercise: 'nerve-glide' as const, glide: aGlide('SSTbh') };
  wentWell(await first.end(header({ exercise: 'nerve-glide' }), { state: 'finished', result: glided }));
  first.close();
  expect(wentWell(await wentWell(await openSetStore(page)).read(idOf(1))).result).toEqual(glided);
});
