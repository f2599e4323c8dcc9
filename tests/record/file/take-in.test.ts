import { IDBObjectStore } from 'fake-indexeddb';
import fc from 'fast-check';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { givenPlan, takenOn } from '../../../src/dose/given-plan.ts';
import type { Into } from '../../../src/record/file/record-store.ts';
import { openSetStore } from '../../../src/record/open-store.ts';
import { type Person, SELF } from '../../../src/record/person.ts';
import type { Store } from '../../../src/record/store.ts';
import type { StoredSet } from '../../../src/record/stored-set.ts';
import { deg } from '../../../src/units.ts';
import { dayOf, redFlags, report, momentOf as toldAt } from '../../symptoms/told.ts';
import { fakeBrowser } from '../fake-browser.ts';
import { edit, header, idOf, momentOf, rep, result } from '../set-builders.ts';
import { therapistsPlan } from '../therapists-plan.ts';
import { wentWell } from '../went-well.ts';
import { type Copy, copiesOfOneHistory } from './history.ts';
import { recordOf, someEntries, someSets, WHOSE } from './written-record.ts';

afterEach(() => {
  vi.restoreAllMocks();
});

const person = (n: number): Person => ({
  id: idOf(700 + n),
  schema: 1,
  name: `Invented ${n}`,
  affectedSide: 'left',
  notes: '',
  addedAt: momentOf(1),
  changedAt: momentOf(1),
  seenUntil: null,
});
const [one, other] = [person(1), person(2)];
const here = (who: Person | null): Into => ({ kind: 'here', person: who?.id ?? SELF });

const opened = async (): Promise<Store> => wentWell(await openSetStore(fakeBrowser().page()));
async function withOne(): Promise<Store> {
  const store = await opened();
  wentWell(await store.people.save(one));
  return store;
}
const take = async (store: Store, into: Into, copy: Copy) =>
  (await store.records()).taken(into, await recordOf(copy.sets, copy.diary));
const all = async (store: Store, who: string = one.id) => ({
  sets: wentWell(await store.of(who).list({ limit: 99 })).sets.toReversed(),
  diary: wentWell(await store.of(who).diary.all()).entries.toSorted((a, b) => (a.id < b.id ? -1 : 1)),
});
const factsOf = async (store: Store) => wentWell(await store.people.list()).people[0]?.facts ?? null;

describe('a record that is taken in', () => {
  test('is all there, of the person for whom it was taken', async () => {
    const store = await withOne();
    const [sets, diary] = [someSets(), someEntries()];
    expect(wentWell(await take(store, here(one), { sets, diary }))).toEqual({
      sets: { fresh: 2, grown: 0, same: 0 },
      entries: { fresh: 3, same: 0 },
      conflicts: 0,
      removed: { here: 0, coming: 0 },
    });
    const found = await all(store);
    expect(found.sets.map(({ id, state, edits, reps }) => ({ id, state, edits, reps }))).toEqual(
      sets.map(({ id, state, edits, reps }) => ({ id, state, edits, reps })),
    );
    expect(found.sets.every((set) => set.person === one.id)).toBe(true);
    expect(found.sets[0]?.result?.curve).toEqual({ tMs: [0, 33.3, 66.7], angleDeg: [1, null, 2.5] });
    expect(found.diary).toEqual(diary.toSorted((a, b) => (a.id < b.id ? -1 : 1)));
    expect((await all(store, SELF)).sets).toEqual([]);
  });

  test('changes nothing the second time, nor does an older copy after a newer one', async () => {
    const store = await withOne();
    const newer = { sets: someSets(), diary: someEntries() };
    const older: Copy = {
      sets: newer.sets.map(
        (set): StoredSet => ({ ...set, state: 'interrupted', result: null, reps: set.reps.slice(0, 1), edits: [] }),
      ),
      diary: newer.diary.slice(0, 1),
    };
    wentWell(await take(store, here(one), newer));
    const before = await all(store);
    expect(wentWell(await take(store, here(one), newer))).toEqual({
      sets: { fresh: 0, grown: 0, same: 2 },
      entries: { fresh: 0, same: 3 },
      conflicts: 0,
      removed: { here: 0, coming: 0 },
    });
    expect(wentWell(await take(store, here(one), older)).sets.same).toBe(2);
    expect(await all(store)).toEqual(before);
  });

  test('makes up for what an older copy did not know: the end of a set, its result, changes by hand', async () => {
    const store = await withOne();
    const [finished] = someSets() as [StoredSet];
    const under: StoredSet = { ...finished, state: 'running', result: null, reps: [rep(1)], edits: [] };
    wentWell(await take(store, here(one), { sets: [under], diary: [] }));
    expect((await all(store)).sets[0]?.state).toBe('interrupted');
    const seen = (await store.records()).looked(one.id, await recordOf([finished], []));
    expect(wentWell(await seen).sets).toEqual({ fresh: 0, grown: 1, same: 0 });
    expect((await all(store)).sets[0]?.state).toBe('interrupted');
    expect(wentWell(await take(store, here(one), { sets: [finished], diary: [] })).sets).toEqual({ fresh: 0, grown: 1, same: 0 });
    expect((await all(store)).sets[0]).toMatchObject({ state: 'finished', edits: finished.edits, reps: finished.reps });
  });

  test('stands beside changes that were made here, each where its moment puts it', async () => {
    const store = await withOne();
    const set: StoredSet = { ...header(), state: 'finished', reps: [rep(1)], result: result([rep(1)]), edits: [] };
    const strike = { kind: 'strike', rep: { kind: 'measured', number: 1 } } as const;
    const [first, theirs, mine] = [edit(strike), edit({ ...strike, kind: 'restore' }), edit(strike)];
    wentWell(await take(store, here(one), { sets: [{ ...set, edits: [first] }], diary: [] }));
    wentWell(await store.edit(mine));
    wentWell(await take(store, here(one), { sets: [{ ...set, edits: [first, theirs] }], diary: [] }));
    expect((await all(store)).sets[0]?.edits).toEqual([first, theirs, mine]);
  });

  test('keeps what is here where it says something else, and says how often', async () => {
    const store = await withOne();
    const [sets, diary] = [someSets(), someEntries()];
    wentWell(await take(store, here(one), { sets, diary }));
    const before = await all(store);
    const [set, second] = sets as [StoredSet, StoredSet];
    const otherResult = result([rep(1, { peakDeg: deg(44) })]);
    const changed: Copy = {
      sets: [{ ...set, reps: otherResult.reps, result: otherResult }, second],
      diary: diary.map((told) => (told.kind === 'symptoms' ? { ...told, intensity: 9 } : told)),
    };
    expect(wentWell(await take(store, here(one), changed))).toEqual({
      sets: { fresh: 0, grown: 0, same: 1 },
      entries: { fresh: 0, same: 2 },
      conflicts: 2,
      removed: { here: 0, coming: 0 },
    });
    expect(await all(store)).toEqual(before);
  });

  test('has a change by hand whose id stands here with another set: it is counted, the rest is taken', async () => {
    const store = await withOne();
    const [set] = someSets() as [StoredSet];
    const [strayed] = set.edits;
    wentWell(await take(store, here(one), { sets: [set], diary: [] }));
    const next: StoredSet = {
      ...set,
      ...header({ id: idOf(9), startedAt: momentOf(9) }),
      edits: strayed ? [{ ...strayed, setId: idOf(9) }] : [],
    };
    expect(wentWell(await take(store, here(one), { sets: [next], diary: [] }))).toMatchObject({
      sets: { fresh: 1 },
      conflicts: 1,
      removed: { here: 0, coming: 0 },
    });
  });

  test('may hold the plan that was given from here: taken on under its id, it is no contradiction', async () => {
    const store = await withOne();
    const plan = therapistsPlan;
    wentWell(await store.of(one.id).diary.add([plan]));
    const theirs = takenOn({ ...givenPlan(plan), by: { ...plan.by, name: '' } }, { at: toldAt(2, 8), day: dayOf(2) });
    expect(wentWell(await take(store, here(one), { sets: [], diary: [theirs] }))).toMatchObject({
      entries: { fresh: 0, same: 1 },
      conflicts: 0,
      removed: { here: 0, coming: 0 },
    });
    expect((await all(store)).diary).toEqual([plan]);
  });

  test('of somebody who is here already under another name is refused, and nothing is written', async () => {
    const store = await withOne();
    wentWell(await take(store, here(one), { sets: someSets(), diary: [] }));
    const told = [report(9, 9)];
    expect(await take(store, here(null), { sets: someSets(), diary: told })).toEqual({
      ok: false,
      error: { kind: 'record-elsewhere', person: one.id, count: 2 },
    });
    expect(await take(store, { kind: 'new', person: other }, { sets: someSets(), diary: told })).toMatchObject({ ok: false });
    expect(await all(store, SELF)).toEqual({ sets: [], diary: [] });
    expect(wentWell(await store.people.list()).people.length).toBe(1);
  });

  test('drops what was worked out of the person, so that a red flag in it shows', async () => {
    const store = await withOne();
    wentWell(await store.people.facts(one.id, 'UTC'));
    expect(await factsOf(store)).not.toBe(null);
    wentWell(await take(store, here(one), { sets: [], diary: [redFlags(4, 7, { 'saddle-numbness': 'yes' })] }));
    expect(await factsOf(store)).toBe(null);
    expect(wentWell(await store.people.facts(one.id, 'UTC')).stop).toMatchObject({ flags: ['saddle-numbness'], urgency: 'now' });
  });

  test.each(['sets', 'results', 'edits', 'diary', 'recordIds', 'facts'])(
    'is not taken in at all when %s can’t be written',
    async (table) => {
      const store = await opened();
      const stopped = (way: 'put' | 'add' | 'delete') => {
        const original = IDBObjectStore.prototype[way] as (...args: unknown[]) => IDBRequest;
        const stopping = function (this: IDBObjectStore, ...args: unknown[]): IDBRequest {
          if (this.name === table) throw new DOMException('full', 'QuotaExceededError');
          return original.apply(this, args);
        };
        vi.spyOn(IDBObjectStore.prototype, way).mockImplementation(stopping as never);
      };
      for (const way of ['put', 'add', 'delete'] as const) stopped(way);
      const outcome = await take(store, { kind: 'new', person: one }, { sets: someSets(), diary: someEntries() });
      vi.restoreAllMocks();
      expect(outcome).toMatchObject({ ok: false, error: { kind: 'store-full' } });
      expect(await all(store)).toEqual({ sets: [], diary: [] });
      expect(wentWell(await store.people.list()).people).toEqual([]);
      expect(wentWell(await (await store.records()).ownerOf(WHOSE.ids))).toBe(null);
    },
  );
});

describe('the ids of a record', () => {
  test('are made once, and lead to the person for whom a record was taken in', async () => {
    const patient = await opened();
    const ids = wentWell(await (await patient.records()).idsOf(SELF));
    expect(ids.length).toBe(1);
    expect(wentWell(await (await patient.records()).idsOf(SELF))).toEqual(ids);

    const therapist = await opened();
    const records = await therapist.records();
    const record = await recordOf(someSets(), [], { ...WHOSE, ids: [...ids] });
    expect(wentWell(await records.ownerOf(ids))).toBe(null);
    wentWell(await records.taken({ kind: 'new', person: one }, record));
    expect(wentWell(await records.ownerOf(ids))).toBe(one.id);
    expect(wentWell(await records.idsOf(one.id))).toEqual([one.id, ...ids]);
    expect(wentWell(await records.ownerOf([one.id]))).toBe(one.id);
    wentWell(await therapist.people.remove(one.id));
    expect(wentWell(await records.ownerOf(ids))).toBe(null);
  });

  test('go along to another machine, so that the record is known there as well as here', async () => {
    const [old, fresh] = [await opened(), await opened()];
    const ids = wentWell(await (await old.records()).idsOf(SELF));
    wentWell(
      await (await fresh.records()).taken(here(null), await recordOf(someSets(), someEntries(), { ...WHOSE, ids: [...ids] })),
    );
    expect(wentWell(await (await fresh.records()).idsOf(SELF))).toEqual(ids);
    expect((await all(fresh, SELF)).sets.map(({ id }) => id)).toEqual([idOf(1), idOf(2)]);
  });
});

test('copies of one history come to the same in whichever order they are taken in', async () => {
  await fc.assert(
    fc.asyncProperty(copiesOfOneHistory(3), fc.shuffledSubarray([0, 1, 2], { minLength: 3 }), async (copies, order) => {
      const [straight, shuffled] = [await withOne(), await withOne()];
      for (const copy of copies) wentWell(await take(straight, here(one), copy));
      for (const i of [...order, 0]) wentWell(await take(shuffled, here(one), copies[i] as Copy));
      expect(await all(shuffled)).toEqual(await all(straight));
      straight.close();
      shuffled.close();
    }),
    { numRuns: 25 },
  );
});
