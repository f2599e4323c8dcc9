import { IDBObjectStore } from 'fake-indexeddb';
import fc from 'fast-check';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { HandSet, SetLink } from '../../src/dose/done-set.ts';
import { PRESCRIBED_EXERCISE_IDS } from '../../src/dose/prescribed-exercise.ts';
import type { Prescription } from '../../src/dose/prescription.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import { database } from '../../src/record/database.ts';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import { openSetStore } from '../../src/record/open-store.ts';
import { sameValue } from '../../src/record/same-value.ts';
import type { Store } from '../../src/record/store.ts';
import { deg } from '../../src/units.ts';
import { angleMark, checkIn, clearance, dayOf, entry, momentOf, redFlags, report, selfCheck } from '../symptoms/told.ts';
import { fakeBrowser } from './fake-browser.ts';
import { edit, header, idOf, removedAt, rep, result } from './set-builders.ts';
import { wentWell } from './went-well.ts';

afterEach(() => {
  vi.restoreAllMocks();
});

const fresh = async (): Promise<Store> => wentWell(await openSetStore(fakeBrowser().page()));
const itemOf = (n: number) => idOf(5000 + n);

const prescription: Prescription = {
  ...entry(1, 9),
  kind: 'prescription',
  by: { role: 'therapist', name: '' },
  revises: null,
  items: PRESCRIBED_EXERCISE_IDS.map((id, n) => startingDose(id, itemOf(n), ['left', 'right'])),
  selfChecks: { checks: ['big-toe', 'heel-walk'], sides: ['left', 'right'], everyDays: 7 },
};
const handSet = (n: number, hour: number, over: Partial<HandSet> = {}): HandSet => ({
  ...entry(n, hour),
  kind: 'hand-set',
  exercise: 'toe-lift',
  side: 'right',
  itemId: itemOf(3),
  reps: 15,
  counted: 'by-hand',
  ...over,
});
const link = (n: number, setId: string, over: Partial<SetLink> = {}): SetLink => ({
  ...entry(n, 9),
  kind: 'set-link',
  setId,
  prescriptionId: prescription.id,
  itemId: itemOf(0),
  ...over,
});
const oneOfEach: readonly DiaryEntry[] = [
  prescription,
  report(2, 9, { intensity: 3, kinds: ['pain', 'tingling'], places: [{ region: 'big-toe', side: 'left' }], itemId: itemOf(0) }),
  report(2, 10, {
    intensity: 'not-answered',
    kinds: 'not-answered',
    places: 'not-answered',
    moment: 'after-set',
    setId: idOf(1),
  }),
  redFlags(2, 11, { 'bladder-bowel': 'yes', 'fever-or-fall': 'not-answered' }),
  clearance(2, 12),
  link(2, idOf(1), { at: momentOf(2, 13) }),
  handSet(2, 14),
  selfCheck(2, 15, [
    { check: 'big-toe', side: 'left', found: 'easily-pushed-down' },
    { check: 'heel-walk', side: 'left', found: 7 },
    { check: 'heel-stand', side: 'right', found: 12.5 },
    { check: 'foot-slap', side: 'right', found: 'not-answered' },
  ]),
  checkIn(3, 8, { afterwards: 'settled', worst: 'not-answered' }),
  {
    ...entry(3, 9),
    kind: 'dose-step',
    prescriptionId: prescription.id,
    itemId: itemOf(0),
    direction: 'back',
    from: { setsADay: 2, repsASet: 10, holdS: 0 },
    to: { setsADay: 1, repsASet: 10, holdS: 0 },
    aboutDay: null,
    reason: 'chosen',
    by: 'patient',
  },
  angleMark(3, 10),
  angleMark(3, 11, { mark: 'limit', method: 'corrected', zero: 'own', from: 'photo', foot: null, place: null }),
];

describe('the diary', () => {
  test('gives back what was added, the oldest first, from one day to another', async () => {
    const { diary } = await fresh();
    expect(wentWell(await diary.add(oneOfEach.toReversed()))).toBe(oneOfEach.length);
    expect(wentWell(await diary.read(dayOf(1), dayOf(3)))).toEqual({ entries: oneOfEach, damaged: [] });
    expect(wentWell(await diary.read(dayOf(2), dayOf(2))).entries).toEqual(oneOfEach.slice(1, 8));
  });

  test('is still there when the store is opened again', async () => {
    const page = fakeBrowser().page();
    const first = wentWell(await openSetStore(page));
    wentWell(await first.diary.add(oneOfEach));
    first.close();
    const { diary } = wentWell(await openSetStore(page));
    expect(wentWell(await diary.read(dayOf(1), dayOf(9))).entries).toEqual(oneOfEach);
  });

  test('adds the union by id: in any portions and order, again and again, it holds each entry once', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.array(fc.constantFrom(...oneOfEach), { maxLength: 6 }), { maxLength: 5 }),
        async (portions) => {
          const { diary } = await fresh();
          let added = 0;
          for (const portion of portions) added += wentWell(await diary.add(portion));
          const expected = oneOfEach.filter((each) => portions.flat().includes(each));
          expect(wentWell(await diary.read(dayOf(1), dayOf(9))).entries).toEqual(expected);
          expect(added).toBe(expected.length);
        },
      ),
      { numRuns: 25 },
    );
  });

  test('takes nothing of a portion with an entry that differs from its namesake', async () => {
    const { diary } = await fresh();
    const set = handSet(2, 9);
    wentWell(await diary.add([set]));
    const differs = { ok: false, error: { kind: 'entry-differs', id: set.id } };
    expect(await diary.add([handSet(2, 10), { ...set, reps: 99 }])).toEqual(differs);
    expect(wentWell(await diary.read(dayOf(1), dayOf(9))).entries).toEqual([set]);
    const twice = handSet(2, 11);
    expect(await diary.add([twice, { ...twice, reps: 1 }])).toMatchObject({ ok: false, error: { kind: 'entry-differs' } });
  });

  test.each<readonly [string, object]>([
    ['an intensity of eleven', { ...report(2, 9), intensity: 11 }],
    ['a day that does not exist', { ...report(2, 9), day: '2026-02-30' }],
    ['a place that does not exist', { ...report(2, 9), places: [{ region: 'elbow', side: 'left' }] }],
    ['a question left out', { ...redFlags(2, 9), answers: { 'saddle-numbness': 'no' } }],
    ['an id that is no UUID', { ...clearance(2, 9), id: 'one' }],
    ['a field too many', { ...handSet(2, 9), weight: 3 }],
    ['eleven steps of ten', selfCheck(2, 9, [{ check: 'heel-walk', side: 'left', found: 11 }])],
    [
      'a limit upside down',
      {
        ...prescription,
        items: prescription.items.map((item) => ({
          ...item,
          progression: { ...item.progression, limits: { ...item.progression.limits, setsADay: { least: 3, most: 1 } } },
        })),
      },
    ],
    ['two lines with one id', { ...prescription, items: [prescription.items[0], prescription.items[0]] }],
    ['a trial before the first', angleMark(3, 10, { trial: 0 })],
    ['an error below nothing', angleMark(3, 10, { errorDeg: deg(-1) })],
    ['a mark without its zero', { ...angleMark(3, 10), zero: undefined }],
    ['a kind that does not exist', { ...clearance(2, 9), kind: 'mood' }],
  ])('refuses %s, and all that came with it', async (_, wrong) => {
    const { diary } = await fresh();
    const refused = await diary.add([handSet(2, 9), wrong as DiaryEntry]);
    expect(refused).toMatchObject({ ok: false, error: { kind: 'store-refused' } });
    expect(wentWell(await diary.read(dayOf(1), dayOf(9))).entries).toEqual([]);
  });

  test('tells what it cannot read, and reads the rest', async () => {
    const page = fakeBrowser().page();
    const { diary } = wentWell(await openSetStore(page));
    wentWell(await diary.add([handSet(2, 9)]));
    const raw = database(page);
    await raw.open();
    await raw.table('diary').add({ ...clearance(2, 10), person: 'me', note: 7 });
    raw.close();
    const { entries, damaged } = wentWell(await diary.read(dayOf(1), dayOf(9)));
    expect(entries.length).toBe(1);
    expect(damaged).toMatchObject([{ what: expect.stringContaining('note') }]);
  });

  test('says that the disk is full', async () => {
    const { diary } = await fresh();
    vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(() => {
      throw new DOMException('the quota is used up', 'QuotaExceededError');
    });
    expect(await diary.add([handSet(2, 9)])).toEqual({ ok: false, error: { kind: 'store-full' } });
  });

  test('takes back a set counted by hand, and nothing else', async () => {
    const { diary } = await fresh();
    const [set, round] = [handSet(2, 9), redFlags(2, 10, { 'saddle-numbness': 'yes' })];
    wentWell(await diary.add([set, round]));
    wentWell(await diary.removeHandSet(set.id, removedAt));
    expect(await diary.removeHandSet(set.id, removedAt)).toEqual({ ok: false, error: { kind: 'entry-missing', id: set.id } });
    expect(await diary.removeHandSet(round.id, removedAt)).toEqual({ ok: false, error: { kind: 'entry-stays', id: round.id } });
    expect(wentWell(await diary.read(dayOf(1), dayOf(9))).entries).toEqual([round]);
  });
});

test('examples are removed with the sets that they name, and nothing of one’s own', async () => {
  const store = await fresh();
  for (const n of [1, 2]) wentWell(await store.end(header({ id: idOf(n) }), { state: 'finished', result: result([rep(1)]) }));
  const example = { origin: 'example' } as const;
  const own = [handSet(2, 9), link(2, idOf(2), { at: momentOf(2, 10) })];
  wentWell(await store.diary.add([...own, handSet(2, 9, example), link(2, idOf(1), example), link(2, idOf(77), example)]));
  expect(wentWell(await store.diary.removeExamples())).toBe(3);
  expect(wentWell(await store.diary.read(dayOf(1), dayOf(9))).entries).toEqual(own);
  expect(wentWell(await store.list({ limit: 9 })).sets.map(({ id }) => id)).toEqual([idOf(2)]);
  expect(wentWell(await store.diary.removeExamples())).toBe(0);
});

describe('the log for the rules', () => {
  const stored = async (store: Store, n: number, over: Parameters<typeof header>[0] = {}) =>
    wentWell(
      await store.end(header({ id: idOf(n), startedAt: momentOf(4, 22.5), ...over }), {
        state: 'finished',
        result: result([rep(1), rep(2)]),
      }),
    );
  const logOf = async (store: Store, timeZone = 'UTC') => wentWell(await store.diary.log(dayOf(2), timeZone));

  test('sorts the diary by kind', async () => {
    const store = await fresh();
    wentWell(await store.diary.add(oneOfEach));
    const { log, damaged } = await logOf(store);
    expect(damaged).toEqual([]);
    expect(log.prescriptions).toEqual([prescription]);
    expect(
      [log.reports, log.redFlags, log.clearances, log.checkIns, log.selfChecks, log.steps, log.angleMarks].map(
        ({ length }) => length,
      ),
    ).toEqual([2, 1, 1, 1, 1, 1, 2]);
    expect(log.done).toMatchObject([
      { exercise: 'toe-lift', side: 'right', reps: 15, day: dayOf(2), endedAt: momentOf(2, 14), itemId: itemOf(3) },
    ]);
  });

  test('has measured sets on the day of the place, or of their link, with what was edited by hand', async () => {
    const store = await fresh();
    await stored(store, 1);
    wentWell(await store.edit(edit({ kind: 'add' }, idOf(1))));
    const seen = { id: idOf(1), exercise: 'foot-tap', side: 'left', reps: 3, itemId: null, rangesDeg: [14.75, 14.75] };
    expect((await logOf(store)).log.done).toMatchObject([{ ...seen, day: dayOf(4) }]);
    expect((await logOf(store, 'Europe/Madrid')).log.done).toMatchObject([{ ...seen, day: dayOf(5) }]);
    wentWell(await store.diary.add([link(3, idOf(1))]));
    expect((await logOf(store)).log.done).toMatchObject([{ ...seen, day: dayOf(3), itemId: itemOf(0) }]);
    // From the first repetition's start to the last one's end: how long the pictures ran before is no part of it.
    const tookMs = rep(2).endMs - rep(1).startMs;
    expect(Date.parse((await logOf(store)).log.done[0]?.endedAt ?? '')).toBe(Date.parse(momentOf(4, 22.5)) + tookMs);
  });

  test('leaves out what nobody did here: files and examples without a link, sets that run, days before', async () => {
    const store = await fresh();
    await stored(store, 1, { source: 'file' });
    await stored(store, 2, { source: 'example' });
    await stored(store, 3, { startedAt: momentOf(1, 12) });
    wentWell(await store.begin(header({ id: idOf(4), startedAt: momentOf(4, 9) })));
    expect((await logOf(store)).log.done).toEqual([]);
    wentWell(await store.diary.add([link(4, idOf(1))]));
    expect((await logOf(store)).log.done.map(({ id }) => id)).toEqual([idOf(1)]);
  });
});

test('plain data is the same whatever the order of its keys, and only then', () => {
  fc.assert(
    fc.property(fc.jsonValue(), fc.jsonValue(), (a, b) => {
      const turned = (value: unknown): unknown =>
        Array.isArray(value)
          ? value.map(turned)
          : typeof value === 'object' && value !== null
            ? Object.fromEntries(
                Object.entries(value)
                  .toReversed()
                  .map(([key, inner]) => [key, turned(inner)]),
              )
            : value;
      expect(sameValue(a, turned(a))).toBe(true);
      expect(sameValue(a, b)).toBe(sameValue(b, a));
    }),
  );
  expect(sameValue({ a: undefined }, { b: undefined })).toBe(false);
  expect(sameValue([], {})).toBe(false);
  expect(sameValue({ a: 1 }, { a: 1, b: 2 })).toBe(false);
  expect(sameValue(['a'], ['b'])).toBe(false);
});
