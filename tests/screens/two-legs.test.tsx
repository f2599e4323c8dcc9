// @vitest-environment jsdom
/** A plan with two lines of one exercise, a leg each, on the screens that show plans. */
import { cleanup, fireEvent, screen, within } from '@testing-library/react';
import { afterEach, expect, test } from 'vitest';
import type { PrescribedExercise } from '../../src/dose/prescribed-exercise.ts';
import type { Prescription } from '../../src/dose/prescription.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import { newId } from '../../src/record/new-id.ts';
import { encodePlanCode } from '../../src/record/plan-transfer.ts';
import { wentWell } from '../record/went-well.ts';
import { ALL_NO, daysAgo } from './diary-builder.ts';
import { fakeServices } from './fake-services.ts';
import { shownAt } from './shown.tsx';

afterEach(cleanup);

const taps = (side: 'left' | 'right', repsASet: number): PrescribedExercise => ({
  ...startingDose('foot-tap', newId(), [side]),
  start: { setsADay: 2, repsASet, holdS: 0 },
  basis: 'therapist',
});
const [left, right] = [taps('left', 6), taps('right', 12)];
const plan: Prescription = {
  ...daysAgo(3),
  kind: 'prescription',
  by: { role: 'therapist', name: 'Wilma Beispiel (invented)' },
  revises: null,
  items: [left, right],
  selfChecks: { checks: [], sides: [], everyDays: 7 },
};

/** Yesterday the left leg did both of its sets, the right leg one, which stirred symptoms up. */
function services() {
  const fake = fakeServices();
  const counted = (item: PrescribedExercise, side: 'left' | 'right'): DiaryEntry => ({
    ...daysAgo(1),
    kind: 'hand-set',
    exercise: 'foot-tap',
    side,
    itemId: item.id,
    reps: item.start.repsASet,
    counted: 'by-hand',
  });
  const stirred = counted(right, 'right');
  const felt = { kinds: ['tingling'], places: [{ region: 'calf-outer', side: 'right' }] } as const;
  const told = { kind: 'symptoms', itemId: right.id, ...felt } as const;
  fake.entries.push(
    plan,
    { ...daysAgo(1), ...told, moment: 'before-set', setId: null, intensity: 1 },
    counted(left, 'left'),
    counted(left, 'left'),
    stirred,
    { ...daysAgo(1), ...told, moment: 'after-set', setId: stirred.id, intensity: 4 },
    { ...daysAgo(0), kind: 'red-flags', answers: ALL_NO },
  );
  return fake.services;
}

test('today has a card and a proposal for each leg, named by it', async () => {
  shownAt('/today', services());
  const card = async (name: string) => (await screen.findByRole('heading', { name })).closest('li') as HTMLElement;
  expect((await card('Foot taps, left leg')).textContent).toContain('6 times');
  expect((await card('Foot taps, right leg')).textContent).toContain('12 times');
  const back = await screen.findByRole('heading', { name: 'Foot taps, right leg: Do a little less for now' });
  expect(back.closest('li')?.textContent).toContain('symptoms became clearly stronger');
  expect(screen.queryByRole('heading', { name: /^Foot taps, left leg:/ })).toBeNull();
});

test('how it is going has each leg against its own dose', async () => {
  shownAt('/progress', services());
  const part = async (name: string) => (await screen.findByRole('heading', { name })).closest('section')?.textContent;
  expect(await part('Foot taps, left leg')).toContain('2 of 8');
  expect(await part('Foot taps, right leg')).toContain('1 of 8');
});

test('the report has both legs in one row of what was done, and says of each what is proposed', async () => {
  shownAt('/report', services());
  const part = async (name: string) => (await screen.findByRole('heading', { name })).closest('section') as HTMLElement;
  const rows = within(await part('Done against due')).getAllByRole('row');
  expect(rows).toHaveLength(2);
  expect(rows[1]?.textContent).toMatch(/^Foot taps2 of 8 sets.*1 of 8 sets/);
  const prescribed = (await part('Prescribed')).textContent;
  expect(prescribed).toMatch(/Foot taps, left2 sets a day, 6 times/);
  expect(prescribed).toMatch(/Foot taps, right2 sets a day, 12 times/);
  expect(screen.getByText(/^Foot taps: left: keep the dose\. .* right: step back \(/)).toBeTruthy();
});

test('a plan with a leg each is shown under one name where it is taken on, and comes as two lines', async () => {
  const { services: empty, entries } = fakeServices();
  shownAt(`/take/${wentWell(encodePlanCode(plan, { named: true }))}`, empty);
  const line = (await screen.findByRole('heading', { name: 'Foot taps' })).closest('li') as HTMLElement;
  expect(line.textContent).toContain('Left leg: 6 times; 2 sets a day, every day');
  expect(line.textContent).toContain('Right leg: 12 times; 2 sets a day, every day');
  fireEvent.click(await screen.findByRole('button', { name: 'Take this plan on' }));
  expect(await screen.findByRole('heading', { name: 'Foot taps, right leg' })).toBeTruthy();
  expect(entries).toMatchObject([{ kind: 'prescription', items: [left, right] }]);
});
