import { IDBObjectStore } from 'fake-indexeddb';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { startingDose } from '../../src/dose/starting-doses.ts';
import { database } from '../../src/record/database.ts';
import { openSetStore } from '../../src/record/open-store.ts';
import type { Person } from '../../src/record/person.ts';
import type { Store } from '../../src/record/store.ts';
import { dayOf, entry, redFlags, report } from '../symptoms/told.ts';
import { fakeBrowser } from './fake-browser.ts';
import { edit, header, idOf, momentOf, removedAt, rep, result } from './set-builders.ts';
import { wentWell } from './went-well.ts';

afterEach(() => {
  vi.restoreAllMocks();
});

const person = (n: number, over: Partial<Person> = {}): Person => ({
  id: idOf(700 + n),
  schema: 1,
  name: `Invented ${n}`,
  affectedSide: 'left',
  notes: '',
  addedAt: momentOf(1),
  changedAt: momentOf(1),
  seenUntil: null,
  ...over,
});
const [one, other] = [person(1), person(2)];
const setOf = (who: Person, n: number) => header({ id: idOf(n), startedAt: momentOf(n), person: who.id, source: 'camera' });

async function twoPeople(): Promise<Store> {
  const store = wentWell(await openSetStore(fakeBrowser().page()));
  wentWell(await store.people.save(one));
  wentWell(await store.people.save(other));
  return store;
}
const factsOf = async (store: Store, who: Person) =>
  wentWell(await store.people.list()).people.find(({ person: { id } }) => id === who.id)?.facts ?? null;

describe('people', () => {
  test('are listed, read and replaced', async () => {
    const store = await twoPeople();
    wentWell(await store.people.save({ ...other, notes: 'Calls on Fridays.', changedAt: momentOf(2) }));
    expect(wentWell(await store.people.read(other.id))).toMatchObject({ name: 'Invented 2', notes: 'Calls on Fridays.' });
    expect(wentWell(await store.people.list()).people.map((each) => each.person.id)).toEqual([one.id, other.id]);
    expect(await store.people.read(idOf(1))).toEqual({ ok: false, error: { kind: 'person-missing', id: idOf(1) } });
  });

  test.each([
    ['no name', { name: '   ' }],
    ['a name as long as a letter', { name: 'x'.repeat(81) }],
    ['a side that there is not', { affectedSide: 'front' as never }],
  ])('are refused with %s', async (_, wrong) => {
    const store = await twoPeople();
    expect(await store.people.save(person(3, wrong))).toMatchObject({ ok: false, error: { kind: 'store-refused' } });
    expect(wentWell(await store.people.list()).people.length).toBe(2);
  });

  test('who cannot be read are told, and do not hide the others', async () => {
    const page = fakeBrowser().page();
    const store = wentWell(await openSetStore(page));
    wentWell(await store.people.save(one));
    const raw = database(page);
    await raw.open();
    await raw.table('people').add({ ...other, name: 7 });
    raw.close();
    const { people, damaged } = wentWell(await store.people.list());
    expect(people.map((each) => each.person)).toEqual([one]);
    expect(damaged).toMatchObject([{ id: other.id, what: expect.stringContaining('name') }]);
  });

  test('have each their own sets and diary', async () => {
    const store = await twoPeople();
    for (const [who, n] of [
      [one, 1],
      [other, 2],
      [one, 3],
    ] as const) {
      wentWell(await store.of(who.id).end(setOf(who, n), { state: 'finished', result: result([rep(1)]) }));
      wentWell(await store.of(who.id).diary.add([report(n, 9, { id: idOf(900 + n) })]));
    }
    const idsOf = async (who: Person) => wentWell(await store.of(who.id).list({ limit: 9 })).sets.map(({ id }) => id);
    expect(await idsOf(one)).toEqual([idOf(3), idOf(1)]);
    expect(await idsOf(other)).toEqual([idOf(2)]);
    expect(wentWell(await store.list({ limit: 9 })).sets).toEqual([]);
    expect(wentWell(await store.of(other.id).diary.all()).entries.map(({ id }) => id)).toEqual([idOf(902)]);
    const pages = wentWell(await store.of(one.id).list({ limit: 1 }));
    expect(pages.next).not.toBeNull();
    const after = pages.next ? wentWell(await store.of(one.id).list({ limit: 1, after: pages.next })) : null;
    expect(after?.sets.map(({ id }) => id)).toEqual([idOf(1)]);
    expect(after?.next).toBeNull();
  });

  test('an entry of one person is not taken on for another', async () => {
    const store = await twoPeople();
    const told = report(2, 9);
    wentWell(await store.of(one.id).diary.add([told]));
    expect(await store.of(other.id).diary.add([told])).toMatchObject({ ok: false, error: { kind: 'entry-differs' } });
    expect(wentWell(await store.of(other.id).diary.all()).entries).toEqual([]);
  });

  test('go with all that is theirs, and nothing of the others', async () => {
    const store = await twoPeople();
    for (const [who, n] of [[one, 1] as const, [other, 2] as const]) {
      wentWell(await store.of(who.id).end(setOf(who, n), { state: 'finished', result: result([rep(1)]) }));
      wentWell(await store.of(who.id).edit({ ...edit({ kind: 'add' }), setId: idOf(n), id: idOf(50 + n) }));
      wentWell(await store.of(who.id).diary.add([report(n, 9)]));
    }
    wentWell(await store.people.remove(one.id));
    expect(wentWell(await store.people.list()).people.map((each) => each.person)).toEqual([other]);
    expect(await store.read(idOf(1))).toMatchObject({ ok: false, error: { kind: 'set-missing' } });
    expect(wentWell(await store.of(one.id).diary.all()).entries).toEqual([]);
    expect(wentWell(await store.read(idOf(2))).edits.length).toBe(1);
    expect(wentWell(await store.of(other.id).diary.all()).entries.length).toBe(1);
    expect(await store.people.remove(one.id)).toMatchObject({ ok: false, error: { kind: 'person-missing' } });
  });

  test('stay while one of their sets runs', async () => {
    const store = await twoPeople();
    wentWell(await store.of(one.id).begin(setOf(one, 1)));
    expect(await store.people.remove(one.id)).toMatchObject({ ok: false, error: { kind: 'set-running' } });
    expect(wentWell(await store.people.read(one.id))).toEqual(one);
  });
});

describe('the facts of a person', () => {
  test('are worked out once and kept, and the list shows them without looking at a set', async () => {
    const store = await twoPeople();
    const item = startingDose('foot-tap', idOf(800), ['left']);
    wentWell(
      await store.of(one.id).diary.add([
        {
          ...entry(1, 9),
          kind: 'prescription',
          by: { role: 'therapist', name: '' },
          revises: null,
          items: [item],
          selfChecks: { checks: [], sides: ['left'], everyDays: 7 },
        },
        redFlags(2, 9, { 'bladder-bowel': 'yes' }),
      ]),
    );
    expect(await factsOf(store, one)).toBeNull();
    const facts = wentWell(await store.people.facts(one.id, 'UTC'));
    expect(facts).toMatchObject({
      lastActivity: dayOf(2),
      plan: { since: dayOf(1), lines: [{ exercise: 'foot-tap', sides: ['left'] }] },
      stop: { flags: ['bladder-bowel'], weakness: [], urgency: 'now' },
    });
    const read: string[] = [];
    const { getAll, openCursor } = IDBObjectStore.prototype;
    vi.spyOn(IDBObjectStore.prototype, 'getAll').mockImplementation(function (this: IDBObjectStore, ...args) {
      read.push(this.name);
      return getAll.apply(this, args);
    });
    vi.spyOn(IDBObjectStore.prototype, 'openCursor').mockImplementation(function (this: IDBObjectStore, ...args) {
      read.push(this.name);
      return openCursor.apply(this, args);
    });
    expect(await factsOf(store, one)).toEqual(facts);
    expect(new Set(read)).toEqual(new Set(['people', 'facts']));
  });

  const writes: readonly (readonly [string, (store: Store) => Promise<unknown>])[] = [
    ['an entry of the diary', (store) => store.of(one.id).diary.add([report(5, 9)])],
    ['a set', (store) => store.of(one.id).end(setOf(one, 3), { state: 'finished', result: result([rep(1)]) })],
    ['a change of a set by hand', (store) => store.of(one.id).edit(edit({ kind: 'add' }))],
    ['a removed set', (store) => store.of(one.id).remove(idOf(1), removedAt)],
  ];
  test.each(writes)('are no longer believed after %s, and those of others are', async (_, write) => {
    const store = await twoPeople();
    wentWell(await store.of(one.id).end(setOf(one, 1), { state: 'finished', result: result([rep(1)]) }));
    wentWell(await store.people.facts(one.id, 'UTC'));
    wentWell(await store.people.facts(other.id, 'UTC'));
    await write(store);
    expect(await factsOf(store, one)).toBeNull();
    expect(await factsOf(store, other)).not.toBeNull();
  });

  test('which older rules worked out are worked out again', async () => {
    const page = fakeBrowser().page();
    const store = wentWell(await openSetStore(page));
    wentWell(await store.people.save(one));
    const facts = wentWell(await store.people.facts(one.id, 'UTC'));
    const raw = database(page);
    await raw.open();
    await raw.table('facts').put({ person: one.id, rules: 0, facts });
    raw.close();
    expect(await factsOf(store, one)).toBeNull();
  });
});
