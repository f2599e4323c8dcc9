// @vitest-environment jsdom
import { cleanup, fireEvent, screen, within } from '@testing-library/react';
import { afterEach, expect, test } from 'vitest';
import { rangeDifference } from '../../src/compare/range-difference.ts';
import type { RangeProgress } from '../../src/dose/range-progress.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import { newId } from '../../src/record/new-id.ts';
import { rangeSentence } from '../../src/screens/progress/range-sentence.ts';
import type { ShownSet } from '../../src/screens/services.ts';
import { enProgress } from '../../src/screens/words/en-progress.ts';
import type { CalendarDay } from '../../src/symptoms/calendar-day.ts';
import { type Deg, deg } from '../../src/units.ts';
import { daysAgo } from './diary-builder.ts';
import { fakeServices } from './fake-services.ts';
import { aRep, aSet } from './fake-sets.ts';
import { shownAt } from './shown.tsx';

afterEach(cleanup);

const item = startingDose('nerve-glide', newId(), ['left']);
const plan: DiaryEntry = {
  ...daysAgo(3),
  kind: 'prescription',
  by: { role: 'patient', name: '' },
  revises: null,
  items: [item],
  selfChecks: { checks: [], sides: [], everyDays: 7 },
};
const set = (days: number): DiaryEntry => ({
  ...daysAgo(days),
  kind: 'hand-set',
  exercise: 'nerve-glide',
  side: 'left',
  itemId: item.id,
  reps: 10,
  counted: 'by-hand',
});
const felt = (days: number, intensity: number, region: 'sole' | 'buttock'): DiaryEntry => ({
  ...daysAgo(days),
  kind: 'symptoms',
  moment: 'before-set',
  setId: null,
  itemId: item.id,
  intensity,
  kinds: ['pain'],
  places: [{ region, side: 'left' }],
});

test('what was done of what was due is said in one sentence, and day by day in a table', async () => {
  const { services, entries } = fakeServices();
  entries.push(plan, set(2), set(1), felt(2, 5, 'sole'), felt(1, 2, 'buttock'));
  shownAt('/today', services);
  fireEvent.click(await screen.findByRole('link', { name: 'How it is going' }));
  await screen.findByRole('heading', { level: 1, name: 'How it is going' });
  expect(await screen.findByText(/2 of 4 sets done, on 2 days\./)).toBeTruthy();
  expect(screen.getByText(/moved up, toward the back/)).toBeTruthy();
  const [days, symptoms] = screen.getAllByRole('table', { hidden: true });
  expect(within(days as HTMLElement).getAllByText('1 of 1')).toHaveLength(2);
  expect(within(days as HTMLElement).getAllByText('0 of 1')).toHaveLength(2);
  expect(within(symptoms as HTMLElement).getByText('Sole')).toBeTruthy();
});

test('without a plan there is nothing to look back on', async () => {
  shownAt('/progress', fakeServices().services);
  expect(await screen.findByText(/nothing to look back on/)).toBeTruthy();
});

const ranges = (...values: readonly number[]): readonly Deg[] => values.map(deg);
const progressOf = (now: readonly Deg[], before: readonly Deg[]): RangeProgress => ({
  seenBy: 'pose',
  mixed: false,
  days: [{ day: '2026-05-02' as CalendarDay, rangeDeg: now[1] as Deg, bandDeg: deg(1.4), target: 'below' }],
  change: rangeDifference('foot-tap', 'occasions', now, before),
  otherSide: rangeDifference('foot-tap', 'legs', now, ranges(16, 16, 16)),
});

test.each([
  [
    'further beyond the error',
    ranges(12, 12, 12),
    ranges(8, 8, 8),
    'It goes 4.0° further than at first, more than the error of measurement.',
  ],
  ['a change within the error', ranges(8.5, 8.5, 8.5), ranges(8, 8, 8), 'No sure change since the first of these days.'],
  ['less far', ranges(8, 8, 8), ranges(12, 12, 12), 'It goes 4.0° less far than at first, more than the error of measurement.'],
  ['too few to tell', ranges(8, 8), ranges(12, 12, 12), 'Too few repetitions to tell a change.'],
] as const)('%s is told so', (_, now, before, says) => {
  expect(rangeSentence(progressOf(now, before), enProgress, 'en')).toContain(says);
});

test('the target and the other leg are named', () => {
  const sentence = rangeSentence(progressOf(ranges(12, 12, 12), ranges(8, 8, 8)), enProgress, 'en');
  expect(sentence).toContain('Lately 12.0° ± 1.4°. That is below the target.');
  expect(sentence).toContain('The other side goes 4.0° further.');
});

test('how far each day went is drawn with its error, the target and the other leg; every value stands in the table', async () => {
  const taps = {
    ...startingDose('foot-tap', newId(), ['left']),
    target: { kind: 'range' as const, fromDeg: deg(10), toDeg: deg(20) },
  };
  const measured = (days: number, side: 'left' | 'right', rangeDeg: number): ShownSet => {
    const reps = [1, 2, 3, 4].map((number) => aRep(number, { rangeDeg: deg(rangeDeg) }));
    return aSet(reps, { id: `${days} ${side}`, side, startedAt: daysAgo(days).at });
  };
  const { services, entries } = fakeServices([measured(3, 'left', 12), measured(1, 'left', 15), measured(1, 'right', 24)]);
  entries.push({ ...plan, items: [taps] });
  shownAt('/progress', services);
  const chart = await screen.findByRole('img', { name: /the target as a band/ });
  expect(chart.querySelectorAll('circle')).toHaveLength(2);
  expect(chart.querySelectorAll('.error-bar')).toHaveLength(2);
  expect(within(chart as HTMLElement).getByText('Other side')).toBeTruthy();
  const [first, second] = [...chart.querySelectorAll('circle')].map((dot) => Number(dot.getAttribute('cy')));
  expect(second).toBeLessThan(first as number);
  // The band from 10 to 20 degrees holds both days; the other leg's 24 degrees lie above it.
  const band = chart.querySelector('.day-chart-target') as SVGRectElement;
  const [top, height] = [Number(band.getAttribute('y')), Number(band.getAttribute('height'))];
  for (const y of [first, second]) {
    expect(y).toBeGreaterThan(top);
    expect(y).toBeLessThan(top + height);
  }
  const line = chart.querySelector('.day-chart-reference');
  expect(Number(line?.getAttribute('y1'))).toBeLessThan(top);
  expect(screen.getAllByText(/^1[25].*±/, { ignore: 'p' }).length).toBe(2);
});

test('eight weeks can be looked back on, symptoms drawn over them', async () => {
  const { services, entries } = fakeServices();
  entries.push({ ...plan, ...daysAgo(40) }, set(30), felt(30, 6, 'sole'), felt(2, 3, 'sole'));
  shownAt('/progress', services);
  const drawn = async () => (await screen.findByRole('img', { name: /strongest symptoms/ })).querySelectorAll('circle').length;
  expect(await drawn()).toBe(1);
  fireEvent.click(screen.getByRole('radio', { name: '8 weeks' }));
  expect(await drawn()).toBe(2);
});
