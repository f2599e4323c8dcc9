// @vitest-environment jsdom
import { cleanup, fireEvent, screen, within } from '@testing-library/react';
import * as v from 'valibot';
import { afterEach, describe, expect, test } from 'vitest';
import type { PrescribedExercise } from '../../src/dose/prescribed-exercise.ts';
import type { Prescription } from '../../src/dose/prescription.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import { newId } from '../../src/record/new-id.ts';
import { prescribedExerciseShape } from '../../src/record/prescription-shape.ts';
import { entryNow } from '../../src/screens/day/entry-now.ts';
import { ALL_NO } from './diary-builder.ts';
import { fakeServices } from './fake-services.ts';
import { shownAt } from './shown.tsx';

afterEach(cleanup);

const card = async (name: RegExp) => (await screen.findByRole('checkbox', { name })).closest('li') as HTMLElement;
const choose = (place: HTMLElement, name: string) => fireEvent.click(within(place).getByRole('radio', { name }));
const leg = (place: HTMLElement, name: string) => within(place).getByRole('group', { name });
const press = (place: HTMLElement, name: string) => fireEvent.click(within(place).getByRole('button', { name }));
const step = (place: HTMLElement, name: string, key: 'ArrowUp' | 'ArrowDown', times = 1) => {
  const field = within(place).getByRole('textbox', { name });
  for (let i = 0; i < times; i += 1) fireEvent.keyDown(field, { key });
};

async function saved(entries: readonly unknown[], button = 'This is my plan'): Promise<Prescription> {
  fireEvent.click(screen.getByRole('button', { name: button }));
  await screen.findByRole('heading', { name: 'Today' });
  const plan = entries.at(-1) as Prescription;
  for (const item of plan.items) v.parse(prescribedExerciseShape, item);
  return plan;
}

function withPlan(items: readonly PrescribedExercise[], over: Partial<Prescription> = {}) {
  const fake = fakeServices();
  const plan: Prescription = {
    ...entryNow(),
    kind: 'prescription',
    by: { role: 'therapist', name: 'Wilma Beispiel (invented)' },
    revises: null,
    items,
    selfChecks: { checks: [], sides: [], everyDays: 7 },
    ...over,
  };
  fake.entries.push(plan);
  return { ...fake, plan };
}
const taps = (side: 'left' | 'right', repsASet: number, setsADay = 2): PrescribedExercise => ({
  ...startingDose('foot-tap', newId(), [side]),
  start: { setsADay, repsASet, holdS: 0 },
  basis: 'therapist',
});

describe('two legs', () => {
  test('have the same dose to begin with, and each its own when they are parted', async () => {
    const { services, entries } = fakeServices();
    shownAt('/plan', services);
    const place = await card(/Foot tap/);
    choose(place, 'Different for each leg');
    step(leg(place, 'Right leg'), 'Times in a set', 'ArrowDown', 5);
    step(leg(place, 'Right leg'), 'No set when symptoms are above', 'ArrowDown');
    fireEvent.click(within(leg(place, 'Right leg')).getByRole('radio', { name: 'Until symptoms start' }));
    const { items } = await saved(entries);
    expect(items).toMatchObject([
      { exercise: 'foot-tap', sides: ['left'], start: { repsASet: 15 }, symptomLimit: 5, target: { kind: 'full' } },
      { exercise: 'foot-tap', sides: ['right'], start: { repsASet: 10 }, symptomLimit: 4, target: { kind: 'symptoms' } },
    ]);
    expect(items.map(({ basis }) => basis)).toEqual(['common-practice', 'therapist']);
    expect(await screen.findByText('Foot taps, left leg')).toBeTruthy();
    expect(screen.getByText('Foot taps, right leg')).toBeTruthy();
  });

  test('one press copies what one leg has to the other, which keeps its own id', async () => {
    const [left, right] = [taps('left', 6), taps('right', 12)];
    const { services, entries } = withPlan([left, right]);
    shownAt('/plan', services);
    const place = await card(/Foot tap/);
    press(place, 'Copy to the right leg');
    expect((await saved(entries, 'Save this plan')).items).toEqual([left, { ...left, id: right.id, sides: ['right'] }]);
  });

  test('are revised each under its own id', async () => {
    const [left, right] = [taps('left', 6), taps('right', 12)];
    const { services, entries } = withPlan([left, right]);
    shownAt('/plan', services);
    step(leg(await card(/Foot tap/), 'Right leg'), 'Times in a set', 'ArrowUp');
    expect((await saved(entries, 'Save this plan')).items).toMatchObject([
      { id: left.id, sides: ['left'], start: left.start },
      { id: right.id, sides: ['right'], start: { repsASet: 13 } },
    ]);
  });

  test('become the same again without a question, as the screen says: what the affected leg has stays', async () => {
    const [left, right] = [taps('left', 6), taps('right', 12)];
    const { services, entries } = withPlan([left, right]);
    shownAt('/plan', services);
    const place = await card(/Foot tap/);
    expect(within(place).getByText('“Same for both legs” keeps what the left leg has.')).toBeTruthy();
    fireEvent.click(within(screen.getByRole('group', { name: 'Which leg?' })).getByRole('radio', { name: 'Right leg' }));
    expect(within(place).getByText('“Same for both legs” keeps what the right leg has.')).toBeTruthy();
    choose(place, 'Same for both legs');
    expect((await saved(entries, 'Save this plan')).items).toMatchObject([
      { id: right.id, sides: ['left', 'right'], start: { repsASet: 12 } },
    ]);
  });

  test('of one exercise do not change those of another, nor when the plan’s leg changes', async () => {
    const { services, entries } = fakeServices();
    shownAt('/plan', services);
    fireEvent.click(await screen.findByRole('checkbox', { name: /Heel stand/ }));
    choose(await card(/Heel stand/), 'Same for both legs');
    fireEvent.click(within(screen.getByRole('group', { name: 'Which leg?' })).getByRole('radio', { name: 'Right leg' }));
    expect((await saved(entries)).items).toMatchObject([
      { exercise: 'foot-tap', sides: ['right'] },
      { exercise: 'heel-stand', sides: ['left', 'right'] },
    ]);
  });
});

test('an exercise that is put aside and taken again has what was set for it', async () => {
  const { services, entries } = fakeServices();
  shownAt('/plan', services);
  step(await card(/Foot tap/), 'Times in a set', 'ArrowDown', 4);
  for (let i = 0; i < 2; i += 1) fireEvent.click(screen.getByRole('checkbox', { name: /Foot tap/ }));
  expect((await saved(entries)).items).toMatchObject([{ start: { repsASet: 11 } }]);
});

test('a further line of the same leg is not shown, said to stay, and stays', async () => {
  const [one, other] = [taps('left', 6), taps('left', 12)];
  const { services, entries } = withPlan([one, other]);
  shownAt('/plan', services);
  expect(await screen.findByText(/One more line of this plan is not shown here/)).toBeTruthy();
  expect((await saved(entries, 'Save this plan')).items).toEqual([one, other]);
});

describe('cautions', () => {
  test('are the usual ones of the exercise, can be put in and taken out, and when to stop stays', async () => {
    const { services, entries } = fakeServices();
    shownAt('/plan', services);
    const place = await card(/Foot tap/);
    const box = (name: RegExp) => within(place).getByRole<HTMLInputElement>('checkbox', { name });
    expect(box(/Nothing on the floor/).checked).toBe(true);
    expect(box(/Keep breathing/).checked).toBe(false);
    expect(within(place).queryByRole('checkbox', { name: /Stop when it hurts more/ })).toBeNull();
    expect(within(place).getByText(/It stays: who exercises alone must know when to stop/)).toBeTruthy();
    fireEvent.click(box(/Nothing on the floor/));
    fireEvent.click(box(/Keep breathing/));
    expect(within(place).getByText('Cautions (2)')).toBeTruthy();
    expect((await saved(entries)).items).toMatchObject([{ cautions: ['stop-if-worse', 'keep-breathing'], basis: 'therapist' }]);
  });

  test('are those of the movement: chosen once for both legs', async () => {
    const { services, entries } = withPlan([taps('left', 6), taps('right', 12)]);
    shownAt('/plan', services);
    fireEvent.click(within(await card(/Foot tap/)).getByRole('checkbox', { name: /Hold on to something/ }));
    const { items } = await saved(entries, 'Save this plan');
    expect(items.map(({ cautions }) => cautions)).toEqual([
      ['stop-if-worse', 'hold-on', 'clear-floor'],
      ['stop-if-worse', 'hold-on', 'clear-floor'],
    ]);
  });

  test('are said before the set, when to stop also where a plan from elsewhere leaves it out', async () => {
    const item: PrescribedExercise = { ...taps('left', 6), cautions: ['keep-breathing'] };
    const { services, entries } = withPlan([item]);
    entries.push({ ...entryNow(), kind: 'red-flags', answers: ALL_NO });
    shownAt(`/today/go/${item.id}/left`, services);
    await screen.findByText('Keep breathing.');
    expect(screen.getByText(/^Stop when it hurts more/)).toBeTruthy();
    expect(screen.queryByText(/^Nothing on the floor/)).toBeNull();
  });
});

describe('who decides', () => {
  test('is the person alone unless a therapist is said to, with a name or without', async () => {
    const { services, entries } = fakeServices();
    shownAt('/plan', services);
    const place = await card(/Foot tap/);
    expect(within(place).getByText('Usual starting dose')).toBeTruthy();
    step(place, 'Times in a set', 'ArrowUp');
    expect(within(place).getByText('Changed from the usual dose')).toBeTruthy();
    choose(document.body, 'A therapist');
    expect(within(place).getByText('Set by the therapist')).toBeTruthy();
    fireEvent.change(screen.getByRole('textbox', { name: /^Name of the therapist/ }), { target: { value: ' Ada Example ' } });
    const plan = await saved(entries, 'Save this plan');
    expect(plan.by).toEqual({ role: 'therapist', name: 'Ada Example' });
    expect(plan.items[0]?.basis).toBe('therapist');
  });

  test('is kept when the plan is revised, and can be changed', async () => {
    const { services, entries, plan } = withPlan([taps('left', 6)]);
    shownAt('/plan', services);
    const name = await screen.findByRole<HTMLInputElement>('textbox', { name: /^Name of the therapist/ });
    expect(name.value).toBe(plan.by.name);
    expect((await saved(entries, 'Save this plan')).by).toEqual(plan.by);
    cleanup();
    shownAt('/plan', services);
    fireEvent.click(await screen.findByRole('radio', { name: 'I do, for myself' }));
    expect((await saved(entries)).by).toEqual({ role: 'patient', name: '' });
  });

  test('a therapist’s plan is given in the next step', async () => {
    const { services, entries } = fakeServices();
    shownAt('/plan', services);
    fireEvent.click(await screen.findByRole('radio', { name: 'A therapist' }));
    fireEvent.click(screen.getByRole('button', { name: 'Save and give it' }));
    expect(await screen.findByRole('heading', { name: 'Give this plan' })).toBeTruthy();
    expect(entries).toMatchObject([{ kind: 'prescription', by: { role: 'therapist', name: '' } }]);
  });

  test('a dose that the rule has stepped is no longer called a starting dose', async () => {
    const { services, entries, plan } = withPlan([startingDose('nerve-glide', newId(), ['left'])]);
    const item = plan.items[0] as PrescribedExercise;
    const to = { ...item.start, setsADay: 2 };
    const taken = { prescriptionId: plan.id, itemId: item.id, direction: 'up', from: item.start, to } as const;
    entries.push({ ...entryNow(), kind: 'dose-step', ...taken, aboutDay: null, reason: 'good-days', by: 'rule' });
    shownAt('/plan', services);
    expect(within(await card(/Nerve glide/)).getByText('Usual dose, stepped since')).toBeTruthy();
  });
});

describe('the rule', () => {
  test('is read in sentences that follow its numbers and limits', async () => {
    const { services, entries } = fakeServices();
    shownAt('/plan', services);
    const place = await card(/Foot tap/);
    const says = (text: string) => expect(within(place).getAllByText(text).length).toBeGreaterThan(0);
    says('After one good day: 1 more set a day, at most 3 sets a day.');
    says('When that is reached: 5 more times in a set, at most 20 times.');
    says('Symptoms up by 2 points or more: one step back, at least 1 set of 5.');
    step(place, 'Good days before a step up', 'ArrowUp', 2);
    step(place, 'Sets a day, at most', 'ArrowUp');
    step(place, 'Symptoms up by this much: step back', 'ArrowDown');
    says('After 3 good days in a row: 1 more set a day, at most 4 sets a day.');
    says('Symptoms up by 1 point or more: one step back, at least 1 set of 5.');
    press(place, 'Do this first');
    step(place, 'One step, times', 'ArrowDown', 3);
    says('After 3 good days in a row: 2 more times in a set, at most 20 times.');
    says('When that is reached: 1 more set a day, at most 4 sets a day.');
    expect((await saved(entries)).items[0]?.progression).toMatchObject({
      goodDays: 3,
      clearRise: 1,
      limits: { setsADay: { least: 1, most: 4 } },
      steps: [
        { field: 'repsASet', by: 2 },
        { field: 'setsADay', by: 1 },
      ],
    });
  });

  test('has its limit moved by who prescribes more than it', async () => {
    const { services, entries } = fakeServices();
    shownAt('/plan', services);
    step(await card(/Foot tap/), 'Sets a day', 'ArrowUp', 2);
    expect((await saved(entries)).items).toMatchObject([
      { start: { setsADay: 5 }, progression: { limits: { setsADay: { least: 1, most: 5 } } } },
    ]);
  });
});
