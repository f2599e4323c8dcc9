// @vitest-environment jsdom
import { cleanup, fireEvent, screen, waitFor, within } from '@testing-library/react';
import * as v from 'valibot';
import { afterEach, describe, expect, test } from 'vitest';
import type { Prescription } from '../../src/dose/prescription.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import { newId } from '../../src/record/new-id.ts';
import { prescribedExerciseShape } from '../../src/record/prescription-shape.ts';
import { entryNow } from '../../src/screens/day/entry-now.ts';
import { fakeServices } from './fake-services.ts';
import { shownAt } from './shown.tsx';

afterEach(cleanup);

const lineOf = async (name: RegExp) => (await screen.findByRole('checkbox', { name })).closest('li') as HTMLElement;
const press = (within_: HTMLElement, name: string, key: 'ArrowUp' | 'ArrowDown', times = 1) => {
  const field = within(within_).getByRole('textbox', { name });
  for (let i = 0; i < times; i += 1) fireEvent.keyDown(field, { key });
};
const save = (name = 'This is my plan') => fireEvent.click(screen.getByRole('button', { name }));
const take = async (name: RegExp) => fireEvent.click(await screen.findByRole('checkbox', { name }));

/** The plan as it was kept; all of it fits the stored form. */
async function kept(entries: readonly unknown[]): Promise<Prescription> {
  await screen.findByRole('heading', { name: 'Today' });
  const plan = entries.at(-1) as Prescription;
  for (const item of plan.items) v.parse(prescribedExerciseShape, item);
  return plan;
}

describe('a line of the plan', () => {
  test('takes doses, days, limit, pace, target and thresholds; then it is no longer common practice', async () => {
    const { services, entries } = fakeServices();
    shownAt('/plan', services);
    const line = await lineOf(/Foot tap/);
    press(line, 'Sets a day', 'ArrowDown');
    press(line, 'Times in a set', 'ArrowUp', 3);
    press(line, 'Days a week', 'ArrowDown', 2);
    press(line, 'No set when symptoms are above', 'ArrowDown');
    press(line, 'Rest between sets, seconds', 'ArrowUp');
    press(line, 'Seconds for each', 'ArrowUp');
    fireEvent.click(within(line).getByRole('radio', { name: 'To a range' }));
    press(line, 'To, degrees', 'ArrowUp', 5);
    press(line, 'Good days before a step up', 'ArrowUp');
    press(line, 'Done from this share on, percent', 'ArrowDown');
    press(line, 'Times in a set, at most', 'ArrowUp', 4);
    save();
    expect((await kept(entries)).items).toMatchObject([
      {
        exercise: 'foot-tap',
        start: { setsADay: 2, repsASet: 18, holdS: 0 },
        daysAWeek: 5,
        symptomLimit: 4,
        restS: 75,
        tempoS: 3,
        target: { kind: 'range', fromDeg: 10, toDeg: 25 },
        progression: { goodDays: 2, doneShare: 0.75, limits: { repsASet: { least: 5, most: 24 } } },
        basis: 'therapist',
      },
    ]);
  });

  test('at one’s own pace has none', async () => {
    const { services, entries } = fakeServices();
    shownAt('/plan', services);
    fireEvent.click(within(await lineOf(/Foot tap/)).getByRole('radio', { name: 'At my own pace' }));
    save();
    expect((await kept(entries)).items[0]?.tempoS).toBeNull();
  });

  test('of the big toe goes until symptoms start, or to a range in degrees', async () => {
    shownAt('/plan', fakeServices().services);
    await take(/Big toe lift/);
    const line = await lineOf(/Big toe lift/);
    expect(within(line).getByRole('radio', { name: 'Until symptoms start' })).toBeTruthy();
    expect(within(line).getByRole('radio', { name: 'To a range' })).toBeTruthy();
  });

  test('whose range ends before it begins says so, and is not kept', async () => {
    const { services, entries } = fakeServices();
    shownAt('/plan', services);
    const line = await lineOf(/Foot tap/);
    fireEvent.click(within(line).getByRole('radio', { name: 'To a range' }));
    press(line, 'From, degrees', 'ArrowUp', 10);
    expect(within(line).getByRole('alert').textContent).toBe('The range must end above where it begins.');
    save();
    expect(entries).toEqual([]);
    press(line, 'From, degrees', 'ArrowDown');
    expect(within(line).queryByRole('alert')).toBeNull();
  });

  test('whose dose lies outside its limits says so', async () => {
    const { services } = fakeServices();
    shownAt('/plan', services);
    const line = await lineOf(/Foot tap/);
    press(line, 'Times in a set, at most', 'ArrowDown', 6);
    expect(within(line).getByRole('alert').textContent).toBe('The dose must lie between its least and its most.');
  });
});

test('the checks of strength and how often they come are the plan’s too', async () => {
  const { services, entries } = fakeServices();
  shownAt('/plan', services);
  fireEvent.click(await screen.findByRole('checkbox', { name: /Lift your big toe and push/ }));
  fireEvent.click(screen.getByRole('checkbox', { name: /Does the foot slap/ }));
  press(document.body, 'Repeat after this many days', 'ArrowDown', 3);
  save();
  expect((await kept(entries)).selfChecks).toEqual({
    checks: ['heel-walk', 'foot-slap'],
    sides: ['left', 'right'],
    everyDays: 4,
  });
});

test('a plan may do without checks of strength', async () => {
  const { services, entries } = fakeServices();
  shownAt('/plan', services);
  fireEvent.click(await screen.findByRole('checkbox', { name: /Lift your big toe and push/ }));
  fireEvent.click(screen.getByRole('checkbox', { name: /Walking on the heels/ }));
  expect(screen.queryByRole('textbox', { name: 'Repeat after this many days' })).toBeNull();
  save();
  expect((await kept(entries)).selfChecks.checks).toEqual([]);
});

describe('a plan that is changed', () => {
  test('begins where the old one stands: its lines keep their ids, its dose is the one of today', async () => {
    const { services, entries } = fakeServices();
    const item = startingDose('nerve-glide', newId(), ['right']);
    const old: Prescription = {
      ...entryNow(),
      kind: 'prescription',
      by: { role: 'therapist', name: 'Wilma Beispiel (invented)' },
      revises: null,
      items: [item],
      selfChecks: { checks: ['heel-walk'], sides: ['right'], everyDays: 3 },
    };
    entries.push(old, {
      ...entryNow(),
      kind: 'dose-step',
      prescriptionId: old.id,
      itemId: item.id,
      direction: 'back',
      from: item.start,
      to: { setsADay: 1, repsASet: 5, holdS: 0 },
      aboutDay: null,
      reason: 'chosen',
      by: 'patient',
    });
    shownAt('/plan', services);
    const glide = await screen.findByRole<HTMLInputElement>('checkbox', { name: /Nerve glide/ });
    expect(glide.checked).toBe(true);
    const which = within(screen.getByRole('group', { name: 'Which leg?' }));
    expect(which.getByRole<HTMLInputElement>('radio', { name: 'Right leg' }).checked).toBe(true);
    await take(/Foot tap/);
    save('Save this plan');
    const plan = await kept(entries);
    expect(plan).toMatchObject({ revises: old.id, selfChecks: old.selfChecks });
    expect(plan.items).toMatchObject([
      { exercise: 'foot-tap', sides: ['right'] },
      { id: item.id, exercise: 'nerve-glide', start: { setsADay: 1, repsASet: 5 }, basis: 'common-practice' },
    ]);
  });

  test('an invented plan is no beginning for one’s own', async () => {
    const { services, entries } = fakeServices();
    entries.push({
      ...entryNow('example'),
      kind: 'prescription',
      by: { role: 'therapist', name: 'Wilma Beispiel (invented)' },
      revises: null,
      items: [startingDose('heel-stand', newId(), ['right'])],
      selfChecks: { checks: [], sides: [], everyDays: 7 },
    });
    shownAt('/plan', services);
    expect((await screen.findByRole<HTMLInputElement>('checkbox', { name: /Heel stand/ })).checked).toBe(false);
  });
});

describe('a plan that was changed and not saved', () => {
  const openAgain = async (services: Parameters<typeof shownAt>[1]) => {
    fireEvent.click(screen.getByRole('link', { name: 'Back' }));
    await waitFor(() => expect(screen.queryByRole('heading', { level: 1, name: 'Your plan' })).toBeNull());
    cleanup();
    shownAt('/plan', services);
  };
  const changed = 'Your changes from before are here. They are not saved yet.';

  test('is there when the editor is opened again, says so, and can be dropped', async () => {
    const { services } = fakeServices();
    shownAt('/plan', services);
    await take(/Big toe lift/);
    expect(screen.queryByText(changed)).toBeNull();
    await openAgain(services);
    await screen.findByText(changed);
    expect((await screen.findByRole('checkbox', { name: /Big toe lift/ })).matches(':checked')).toBe(true);
    fireEvent.click(screen.getByRole('button', { name: 'Drop these changes' }));
    await waitFor(() => expect(screen.queryByText(changed)).toBeNull());
    expect((await screen.findByRole('checkbox', { name: /Big toe lift/ })).matches(':checked')).toBe(false);
  });

  test('is gone once it is saved, and the browser asks before it closes the page only while there is something', async () => {
    const { services, entries } = fakeServices();
    const closes = () => window.dispatchEvent(new Event('beforeunload', { cancelable: true }));
    shownAt('/plan', services);
    await screen.findByRole('checkbox', { name: /Big toe lift/ });
    expect(closes()).toBe(true);
    await take(/Big toe lift/);
    expect(closes()).toBe(false);
    save();
    await kept(entries);
    expect(closes()).toBe(true);
    cleanup();
    shownAt('/plan', services);
    await screen.findByRole('checkbox', { name: /Big toe lift/ });
    expect(screen.queryByText(changed)).toBeNull();
  });
});

test('a plan that another tab changed meanwhile is not written over: one sentence says so, and nothing is stored', async () => {
  const { services, entries } = fakeServices();
  shownAt('/plan', services);
  await lineOf(/Foot tap/);
  const theirs: Prescription = {
    ...entryNow(),
    kind: 'prescription',
    by: { role: 'therapist', name: '' },
    revises: null,
    items: [startingDose('leg-raise', newId(), ['left'])],
    selfChecks: { checks: [], sides: ['left', 'right'], everyDays: 7 },
  };
  entries.push(theirs);
  save();
  expect((await screen.findByRole('alert')).textContent).toContain('changed in another tab');
  expect(entries).toEqual([theirs]);
});
