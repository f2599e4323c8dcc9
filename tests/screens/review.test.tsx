// @vitest-environment jsdom
import { cleanup, fireEvent, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, test } from 'vitest';
import { rangeDifference } from '../../src/compare/range-difference.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import { newId } from '../../src/record/new-id.ts';
import type { RepEdit } from '../../src/record/rep-edit.ts';
import { fail } from '../../src/result.ts';
import type { ShownSet } from '../../src/screens/services.ts';
import type { BodyRegion } from '../../src/symptoms/place.ts';
import { type Deg, deg } from '../../src/units.ts';
import { ALL_NO, daysAgo } from './diary-builder.ts';
import { fakeServices } from './fake-services.ts';
import { aRep, aSet } from './fake-sets.ts';
import { shownAt } from './shown.tsx';

afterEach(cleanup);

const taps = {
  ...startingDose('foot-tap', newId(), ['left', 'right']),
  target: { kind: 'range' as const, fromDeg: deg(10), toDeg: deg(20) },
};
const glides = startingDose('nerve-glide', newId(), ['left']);
const plan = (days: number): DiaryEntry => ({
  ...daysAgo(days),
  kind: 'prescription',
  by: { role: 'therapist', name: '' },
  revises: null,
  items: [taps, glides],
  selfChecks: { checks: [], sides: [], everyDays: 7 },
});
const felt = (days: number, intensity: number, region: BodyRegion): DiaryEntry => ({
  ...daysAgo(days),
  kind: 'symptoms',
  moment: 'before-set',
  setId: null,
  itemId: null,
  intensity,
  kinds: ['pain'],
  places: [{ region, side: 'left' }],
});
const byHand = (days: number): DiaryEntry => ({
  ...daysAgo(days),
  kind: 'hand-set',
  exercise: 'nerve-glide',
  side: 'left',
  itemId: glides.id,
  reps: 10,
  counted: 'by-hand',
});
const checkIn = (days: number, afterwards: 'no-flare' | 'settled' | 'not-settled'): DiaryEntry => ({
  ...daysAgo(days),
  kind: 'check-in',
  aboutDay: daysAgo(days + 1).day,
  intensity: 1,
  kinds: [],
  places: [],
  worst: 1,
  afterwards,
  weakness: 'as-before',
});
const ranges = (...values: readonly number[]): readonly Deg[] => values.map(deg);
function measured(days: number, side: 'left' | 'right', degrees: readonly Deg[], change: Partial<ShownSet> = {}): ShownSet {
  const reps = degrees.map((rangeDeg, i) => aRep(i + 1, { rangeDeg }));
  return aSet(reps, { id: `${side} ${days} ${degrees[0]}`, side, startedAt: daysAgo(days).at, ...change });
}

const shown = async () => {
  await screen.findByRole('heading', { level: 2, name: 'Better, same or worse?' });
};
const rowOf = (name: string) =>
  within(screen.getAllByRole('table', { hidden: true })[0] as HTMLElement).getByRole('row', { name: new RegExp(`^${name}`) });

describe('better, same or worse', () => {
  const [first, last, other] = [ranges(10, 10.2, 10.4), ranges(15, 15.1, 15.3), ranges(15.4, 15.5, 15.6)];

  test('is told of each leg with the very figures of compare, and called so only beyond the error', async () => {
    const { services, entries } = fakeServices([
      measured(5, 'left', first),
      measured(1, 'left', last),
      measured(1, 'right', other),
    ]);
    entries.push(plan(6));
    shownAt('/review', services);
    await shown();
    const change = rangeDifference('foot-tap', 'occasions', last, first);
    const legs = rangeDifference('foot-tap', 'legs', last, other);
    if (!change.ok || !legs.ok) throw new Error('the test requires enough repetitions');
    expect([change.value.verdict, legs.value.verdict]).toEqual(['real', 'within-error']);
    const [row, found] = [rowOf('Foot taps, left').textContent, (d: number) => d.toFixed(1)];
    expect(row).toContain(`further+${found(change.value.differenceDeg)}°, limit ${found(change.value.limitDeg)}°`);
    expect(row).toContain(`no sure difference${found(legs.value.differenceDeg)}°, limit ${found(legs.value.limitDeg)}°`);
    expect(rowOf('Foot taps, right').textContent).toContain('measured on one day');
    expect(rowOf('Nerve glides, left').textContent).toContain('not measured');
  });

  test('symptoms are less strong and nearer the spine only where that is clear', async () => {
    const { services, entries } = fakeServices();
    entries.push(plan(6), felt(5, 6, 'sole'), felt(1, 3, 'buttock'));
    shownAt('/review', services);
    await shown();
    expect(screen.getByText('Less strong, beyond the error: 2 points or more.')).toBeTruthy();
    expect(screen.getAllByText('Centralising')[0]).toBeTruthy();
    expect(screen.getByText('Sole, left → Buttock, left')).toBeTruthy();
  });

  test('a point less is no sure change', async () => {
    const { services, entries } = fakeServices();
    entries.push(plan(6), felt(5, 4, 'sole'), felt(1, 3, 'sole'));
    shownAt('/review', services);
    await shown();
    expect(screen.getByText('No sure change: it would take 2 points.')).toBeTruthy();
  });

  test('mornings and missed answers are counted', async () => {
    const { services, entries } = fakeServices();
    entries.push(plan(6), byHand(5), byHand(4), byHand(3), checkIn(4, 'settled'), checkIn(3, 'not-settled'));
    shownAt('/review', services);
    await shown();
    expect(screen.getByText('1 of 2 settled')).toBeTruthy();
    expect(screen.getByText('1 not settled.')).toBeTruthy();
    expect(screen.getByText('No answer for one day of sets.')).toBeTruthy();
  });
});

describe('what has to be looked at first', () => {
  test('a warning sign stands before all else, with what was told', async () => {
    const { services, entries } = fakeServices();
    entries.push(plan(6), byHand(1), { ...daysAgo(0), kind: 'red-flags', answers: { ...ALL_NO, 'fever-or-fall': 'yes' } });
    shownAt('/review', services);
    const stopped = await screen.findByText(/Stopped: the program starts no set/);
    expect(stopped.textContent).toContain(
      'Fever, weight lost without trying, or severe new pain after a fall or if you ever had cancer?',
    );
  });

  test('days without a set are said', async () => {
    const { services, entries } = fakeServices();
    entries.push(plan(9), byHand(7));
    shownAt('/review', services);
    expect(await screen.findByText(/Nothing done for 7 days/)).toBeTruthy();
  });

  test('nothing is made up where all is well', async () => {
    const { services, entries } = fakeServices();
    entries.push(plan(3), byHand(1));
    shownAt('/review', services);
    expect(await screen.findByText('Nothing that has to be looked at first.')).toBeTruthy();
  });
});

test('every set is a mark with its error, told from the target by its shape; the table has the same', async () => {
  const sets = [
    measured(2, 'left', ranges(5, 5, 5)),
    measured(1, 'left', ranges(15, 15, 15)),
    measured(1, 'left', ranges(29, 29, 29)),
  ];
  const { services, entries } = fakeServices(sets);
  entries.push(plan(6));
  shownAt('/review', services);
  const chart = await screen.findByRole('img', { name: /How far it went in each set/ });
  expect([...chart.querySelectorAll('.mark')].map((mark) => mark.getAttribute('data-mark'))).toEqual(['down', 'dot', 'up']);
  expect(chart.querySelectorAll('.error-bar')).toHaveLength(3);
  expect(chart.querySelectorAll('.day-chart-target')).toHaveLength(1);
  const table = screen.getByText('Set by set').closest('details')?.querySelector('table') as HTMLElement;
  expect(within(table).getByText(/below the target/)).toBeTruthy();
  expect(within(table).getByText(/above the target/)).toBeTruthy();
  expect(within(table).getAllByText(/± 1\.4°/)).toHaveLength(3);
});

test('a proposal that was taken stands with what came of it, and what is proposed now', async () => {
  const { services, entries } = fakeServices();
  const aches = (days: number, moment: 'before-set' | 'after-set', hours: number): DiaryEntry => ({
    ...daysAgo(days + hours / 24),
    day: daysAgo(days).day,
    kind: 'symptoms',
    moment,
    setId: null,
    itemId: glides.id,
    intensity: 2,
    kinds: ['pain'],
    places: [{ region: 'buttock', side: 'left' }],
  });
  const held = plan(6);
  entries.push(
    held,
    aches(3, 'before-set', 1 / 60),
    byHand(3),
    aches(3, 'after-set', -1 / 60),
    {
      ...daysAgo(2),
      kind: 'check-in',
      aboutDay: daysAgo(3).day,
      intensity: 2,
      kinds: ['pain'],
      places: [{ region: 'buttock', side: 'left' }],
      worst: 2,
      afterwards: 'no-flare',
      weakness: 'as-before',
    },
    {
      ...daysAgo(2 - 1 / 1440),
      day: daysAgo(2).day,
      kind: 'dose-step',
      prescriptionId: held.id,
      itemId: glides.id,
      direction: 'up',
      from: glides.start,
      to: { ...glides.start, setsADay: 2 },
      aboutDay: daysAgo(3).day,
      reason: 'good-days',
      by: 'rule',
    },
  );
  shownAt('/review', services);
  await shown();
  const taken = (await screen.findAllByText('taken'))[0]?.closest('tr');
  expect(taken?.textContent).toContain('step up: 2 sets a day instead of 1');
  expect(screen.getAllByText(/^Now: keep the dose/)).toHaveLength(2);
});

describe('every set', () => {
  const edits: readonly RepEdit[] = [
    { id: 'e1', schema: 1, setId: 'left 1 14', at: daysAgo(0).at, kind: 'strike', rep: { kind: 'measured', number: 2 } },
    { id: 'e2', schema: 1, setId: 'left 1 14', at: daysAgo(0).at, kind: 'add' },
  ];

  test('leads to its own page, and says what a hand changed; one counted without the camera has none', async () => {
    const { services, entries } = fakeServices([measured(1, 'left', ranges(14, 15, 16), { edits })]);
    entries.push(plan(6), byHand(2));
    shownAt('/review', services);
    const line = await screen.findByRole('link', { name: /^Foot taps, left leg/ });
    expect(line.getAttribute('href')).toBe('#/set/left 1 14');
    expect(line.textContent).toContain('2 of 4 changed by hand: 1 struck, 1 added');
    expect(screen.getByText(/counted without the camera/)).toBeTruthy();
  });

  test('shows each change by hand with its moment on that page', async () => {
    const { services } = fakeServices([measured(1, 'left', ranges(14, 15, 16), { edits })]);
    shownAt('/set/left 1 14', services);
    await screen.findByRole('heading', { level: 2, name: 'Changed by hand' });
    const items = screen.getAllByRole('listitem').map(({ textContent }) => textContent);
    expect(items.some((text) => /:\d\d.*repetition 2 struck out/.test(text ?? ''))).toBe(true);
    expect(items.some((text) => /:\d\d.*a missed repetition added/.test(text ?? ''))).toBe(true);
  });
});

test('all there is can be looked back on, and more is read for it', async () => {
  const asked: (number | undefined)[] = [];
  const { services, entries } = fakeServices();
  entries.push(plan(100), byHand(90), byHand(1));
  const { log } = services.diary;
  shownAt('/review', {
    ...services,
    diary: {
      ...services.diary,
      log: (days) => {
        asked.push(days);
        return log(days);
      },
    },
  });
  await shown();
  fireEvent.click(screen.getByRole('radio', { name: 'All' }));
  const [weeks] = await screen.findAllByText('Done, week by week');
  // 101 days up to today are 15 weeks, each a row under its heads.
  expect(within(weeks?.closest('details') as HTMLElement).getAllByRole('row', { hidden: true })).toHaveLength(16);
  expect(Math.max(...asked.map((days) => days ?? 0))).toBeGreaterThan(3650);
});

test('without a plan there is nothing to review, and a disk that cannot be read is said', async () => {
  const { services } = fakeServices();
  shownAt('/review', services);
  expect(await screen.findByText(/nothing to review/)).toBeTruthy();
  cleanup();
  shownAt('/review', { ...services, diary: { ...services.diary, log: async () => fail({ kind: 'unexpected' }) } });
  expect(await screen.findByRole('alert')).toBeTruthy();
});
