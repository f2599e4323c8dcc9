import { expect, test } from 'vitest';
import type { Prescription } from '../../src/dose/prescription.ts';
import { recordsOfPeriod } from '../../src/fhir/period.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { line, prescription, step } from '../dose/plan.ts';
import { header, idOf } from '../record/set-builders.ts';
import { checkIn, dayOf, entry, momentOf } from '../symptoms/told.ts';

const taps = line('foot-tap');
const planAt = (n: number): Prescription => ({ ...prescription(taps), ...entry(n, 9) });
const setAt = (n: number, hour: number): StoredSet => ({
  ...header({ id: idOf(n), startedAt: momentOf(n, hour) }),
  state: 'finished',
  reps: [],
  result: null,
  edits: [],
});
const idsOf = (all: readonly { readonly id: string }[]) => all.map(({ id }) => id);
const days = { from: dayOf(5), to: dayOf(7) };

test('the days, both ends included, and the plan that held when they began, with its steps until then', () => {
  const [older, held, later] = [planAt(1), planAt(3), planAt(6)];
  const [of, before, within] = [step(older, taps, 2, {}), step(held, taps, 4, {}), step(held, taps, 5, {})];
  const told = [4, 5, 7, 8].map((n) => checkIn(n, 8));
  const { entries, sets } = recordsOfPeriod(
    [4, 5, 7, 8].map((n) => setAt(n, 10)),
    [older, of, held, before, within, later, ...told],
    days,
    'UTC',
  );
  expect(idsOf(entries)).toEqual(idsOf([held, before, within, later, ...told.slice(1, 3)]));
  expect(idsOf(sets)).toEqual([idOf(5), idOf(7)]);
});

test('the day of a set is the person’s own', () => {
  const late = [setAt(4, 23), setAt(7, 23)];
  expect(idsOf(recordsOfPeriod(late, [], days, 'UTC').sets)).toEqual([idOf(7)]);
  expect(idsOf(recordsOfPeriod(late, [], days, 'Asia/Tokyo').sets)).toEqual([idOf(4)]);
});

test('what is invented is left out: entries, plans, and sets that were done for an invented one or are the example', () => {
  const plan: Prescription = { ...planAt(3), origin: 'example' };
  const link = {
    ...entry(5, 10),
    origin: 'example',
    kind: 'set-link',
    setId: idOf(5),
    prescriptionId: plan.id,
    itemId: taps.id,
  } as const;
  const { entries, sets } = recordsOfPeriod(
    [setAt(5, 10), { ...setAt(6, 10), source: 'example' }, setAt(7, 10)],
    [plan, link, { ...checkIn(6, 8), origin: 'example' }],
    days,
    'UTC',
  );
  expect(entries).toEqual([]);
  expect(idsOf(sets)).toEqual([idOf(7)]);
});
