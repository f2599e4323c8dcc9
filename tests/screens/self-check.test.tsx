// @vitest-environment jsdom
import { cleanup, fireEvent, screen, within } from '@testing-library/react';
import { safeParse } from 'valibot';
import { afterEach, expect, test } from 'vitest';
import { localTime } from '../../src/dose/local-time.ts';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import { diaryEntryShape } from '../../src/record/diary-shape.ts';
import { toeHint, toeLiftsOn } from '../../src/screens/check/toe-lifts-on.ts';
import { deg } from '../../src/units.ts';
import { daysAgo } from './diary-builder.ts';
import { fakeServices } from './fake-services.ts';
import { aRep, aSet } from './fake-sets.ts';
import { press, shownAt } from './shown.tsx';

afterEach(cleanup);

const plan: DiaryEntry = {
  ...daysAgo(8),
  kind: 'prescription',
  by: { role: 'patient', name: '' },
  revises: null,
  items: [],
  selfChecks: { checks: ['big-toe', 'heel-walk'], sides: ['left', 'right'], everyDays: 7 },
};
const lastWeek: DiaryEntry = {
  ...daysAgo(8),
  kind: 'self-check',
  findings: [
    { check: 'big-toe', side: 'left', found: 'as-strong' },
    { check: 'heel-walk', side: 'left', found: 9 },
  ],
};
const leg = (check: string, name: string | RegExp) =>
  within(within(screen.getByRole('heading', { name: check }).closest('section') as HTMLElement).getByRole('group', { name }));

test('the prescribed checks are asked for each leg; what is open is kept as not answered', async () => {
  const { services, entries } = fakeServices();
  entries.push(plan);
  shownAt('/self-check', services);
  await screen.findByRole('heading', { level: 1, name: 'Check your strength' });
  expect(screen.getAllByRole('heading', { level: 2 }).map((h) => h.textContent)).toEqual(['Big toe', 'Walking on the heels']);
  fireEvent.click(leg('Big toe', 'Left foot').getByLabelText('As strong as the other side'));
  fireEvent.click(leg('Walking on the heels', /^Right leg/).getByLabelText('10'));
  await press('Keep this');
  expect(await screen.findByText(/Nothing is weaker/)).toBeTruthy();
  expect(entries.at(-1)).toMatchObject({
    kind: 'self-check',
    findings: [
      { check: 'big-toe', side: 'left', found: 'as-strong' },
      { check: 'big-toe', side: 'right', found: 'not-answered' },
      { check: 'heel-walk', side: 'left', found: 'not-answered' },
      { check: 'heel-walk', side: 'right', found: 10 },
    ],
  });
  expect(safeParse(diaryEntryShape, entries.at(-1)).success).toBe(true);
});

test('weaker than last time gives the advice to call, and today stops', async () => {
  const { services, entries } = fakeServices();
  entries.push(plan, lastWeek);
  shownAt('/today', services);
  fireEvent.click(await screen.findByRole('link', { name: 'Check it' }));
  await screen.findByRole('heading', { level: 1, name: 'Check your strength' });
  fireEvent.click(leg('Big toe', 'Left foot').getByLabelText('It lifts, but is easily pushed down'));
  await press('Keep this');
  const alert = await screen.findByRole('alert');
  expect(alert.textContent).toContain('Big toe, left foot');
  expect(alert.textContent).toContain('Call your therapist');
  fireEvent.click(screen.getByRole('link', { name: 'Back to today' }));
  expect(await screen.findByText('No exercises for now: contact your therapist')).toBeTruthy();
});

test('a measured lift speaks for an answer, but never for a toe that is as strong', () => {
  expect(toeHint(deg(2), undefined)).toBe('cannot-lift');
  expect(toeHint(deg(9), deg(24))).toBe('easily-pushed-down');
  expect(toeHint(deg(24), deg(9))).toBeNull();
  // Less than the error of measurement apart.
  expect(toeHint(deg(23), deg(24))).toBeNull();
  expect(toeHint(deg(24), undefined)).toBeNull();
});

test('a film says nothing of today', () => {
  const film = aSet([aRep(1)], { startedAt: new Date().toISOString(), exercise: 'toe-lift', source: 'file' });
  const day = localTime({ nowMs: Date.now(), timeZone: 'UTC' }).day;
  expect(toeLiftsOn([film], day, 'UTC')).toEqual({});
  expect(toeLiftsOn([{ ...film, source: 'camera' }], day, 'UTC')).toEqual({ left: 15 });
});

test('today’s big toe sets are told beside the question, each leg against the other, and nothing is answered by them', async () => {
  const lift = (id: string, side: 'left' | 'right', rangeDeg: number, startedAt: string) =>
    aSet(
      [1, 2, 3].map((n) => aRep(n, { rangeDeg: deg(rangeDeg) })),
      { id, side, startedAt, exercise: 'toe-lift' },
    );
  const { services, entries } = fakeServices([
    lift('a', 'left', 9.2, new Date().toISOString()),
    lift('b', 'right', 24.1, new Date().toISOString()),
    lift('c', 'right', 40, '2026-03-01T10:00:00.000Z'),
  ]);
  entries.push(plan);
  shownAt('/self-check', services);
  expect(
    await screen.findByText(
      /^Today it lifted 9 degrees, the other side 24\. That is clearly less\. Is it “It lifts, but is easily pushed down”\?/,
    ),
  ).toBeTruthy();
  expect(screen.getByText('Today it lifted 24 degrees, the other side 9.')).toBeTruthy();
  await press('Keep this');
  await screen.findByText(/Nothing is weaker/);
  expect(entries.at(-1)).toMatchObject({ findings: [{ found: 'not-answered' }, { found: 'not-answered' }, {}, {}] });
});
