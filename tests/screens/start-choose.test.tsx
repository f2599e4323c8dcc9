// @vitest-environment jsdom
import { cleanup, fireEvent, screen, waitFor, within } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { fail } from '../../src/result.ts';
import { choicesIn, useChoices } from '../../src/screens/choose/choices.ts';
import { fakeServices } from './fake-services.ts';
import { aRep, aSet } from './fake-sets.ts';
import { press, shownAt } from './shown.tsx';

beforeEach(() => useChoices.setState({ choices: choicesIn(null), file: null }));
afterEach(() => {
  cleanup();
  localStorage.clear();
});

/** Whether sets may be started is read from the diary first. */
async function startCamera() {
  const start = screen.getByRole('button', { name: 'Start the camera' });
  await waitFor(() => expect(start.hasAttribute('disabled')).toBe(false));
  fireEvent.click(start);
  await press('None of these');
  await screen.findByRole('button', { name: /Stop/ });
}

describe('the first screen', () => {
  test('the stored sets are listed with their count and range, an interrupted one as such', async () => {
    const sets = [
      aSet([aRep(1), aRep(2)]),
      aSet([aRep(1)], { id: 'set-2', state: 'interrupted', result: null, targetReps: null }),
    ];
    shownAt('/', fakeServices(sets).services);
    const [first, second] = await screen.findAllByRole('link', { name: /Foot taps/ });
    expect(first?.textContent).toContain('15.0° ± 2.0°');
    expect(first?.textContent).toContain('2 of 10');
    expect(second?.textContent).toContain('Interrupted');
    fireEvent.click(first ?? document.body);
    expect(await screen.findByRole('heading', { name: 'Every repetition' })).toBeTruthy();
  });

  test('a store that can’t be reached is said, and the rest works', async () => {
    shownAt('/', fakeServices([], { sets: async () => fail({ kind: 'store-unavailable' }) }).services);
    expect(await screen.findByText(/does not let Evenside store sets/)).toBeTruthy();
    expect(screen.getByRole('button', { name: /Use the camera/ })).toBeTruthy();
  });

  test('the signs that need urgent care are one press away', async () => {
    shownAt('/', fakeServices().services);
    fireEvent.click(screen.getByRole('link', { name: 'Signs that need urgent care' }));
    expect(await screen.findByText(/saddle/)).toBeTruthy();
  });

  test('a browser that lacks what is needed gets a sentence and no choices', () => {
    shownAt('/', fakeServices([], { missing: () => ['secure-context'] }).services);
    expect(screen.getByText(/127\.0\.0\.1/)).toBeTruthy();
    expect(screen.queryByRole('button')).toBeNull();
  });
});

describe('choosing a set', () => {
  test('the choices make the plan, and are remembered', async () => {
    const { services, begun } = fakeServices();
    shownAt('/choose/camera', services);
    await screen.findByRole('heading', { level: 1, name: 'What will you do?' });
    fireEvent.click(screen.getByRole('radio', { name: /Straight leg raise/ }));
    fireEvent.click(screen.getByRole('radio', { name: 'Right leg' }));
    fireEvent.click(screen.getByRole('radio', { name: 'On the left' }));
    fireEvent.click(screen.getByRole('radio', { name: /Most exact/ }));
    const reps = screen.getByRole('textbox', { name: 'How many?' });
    fireEvent.keyDown(reps, { key: 'ArrowUp' });
    await startCamera();
    expect(begun[0]?.plan).toEqual({
      pictures: { kind: 'camera', deviceId: null },
      exercise: 'leg-raise',
      side: 'right',
      targetReps: 11,
      model: 'heavy',
      head: 'left',
      kneeLimitDeg: 15,
      guide: { target: { kind: 'symptoms' }, holdS: 0, tempoS: null },
    });
    expect(choicesIn(localStorage.getItem('evenside.choices'))).toMatchObject({
      exercise: 'leg-raise',
      side: 'right',
      targetReps: 11,
    });
  });

  test('the knee limit is asked for leg raises only, and goes into the plan', async () => {
    const { services, begun } = fakeServices();
    shownAt('/choose/camera', services);
    await screen.findByRole('heading', { level: 1, name: 'What will you do?' });
    fireEvent.click(screen.getByRole('radio', { name: /Foot tap/ }));
    expect(screen.queryByRole('textbox', { name: 'Knee may bend by, degrees' })).toBeNull();
    fireEvent.click(screen.getByRole('radio', { name: /Straight leg raise/ }));
    fireEvent.keyDown(screen.getByRole('textbox', { name: 'Knee may bend by, degrees' }), { key: 'ArrowUp' });
    await startCamera();
    expect(begun[0]?.plan.kneeLimitDeg).toBe(20);
  });

  test('the place of the head is asked only when lying', async () => {
    shownAt('/choose/camera', fakeServices().services);
    await screen.findByRole('heading', { level: 1, name: 'What will you do?' });
    expect(screen.queryByRole('radio', { name: 'On the left' })).toBeNull();
  });

  test('a video can be measured only once it is chosen', async () => {
    const { services, begun } = fakeServices();
    const { container } = shownAt('/choose/file', services);
    await screen.findByRole('heading', { level: 1, name: 'What will you do?' });
    const go = screen.getByRole('button', { name: 'Measure the video' });
    expect(go).toHaveProperty('disabled', true);
    const file = new File(['film'], 'morning.mp4', { type: 'video/mp4' });
    const input = container.querySelector('input[type=file]');
    fireEvent.change(input ?? container, { target: { files: [file] } });
    expect(screen.getByText('morning.mp4')).toBeTruthy();
    fireEvent.click(go);
    expect(begun[0]?.plan.pictures).toEqual({ kind: 'file', file });
  });

  test('several cameras can be chosen from', async () => {
    const cameras = [
      { id: 'a', label: 'Built in' },
      { id: 'b', label: null },
    ];
    const { services, begun } = fakeServices([], { cameras: async () => cameras });
    const { container } = shownAt('/choose/camera', services);
    await screen.findByRole('heading', { level: 1, name: 'What will you do?' });
    fireEvent.click(within(container).getByText('More choices'));
    const select = await screen.findByRole('combobox', { name: /Camera/ });
    fireEvent.change(select, { target: { value: 'b' } });
    await startCamera();
    expect(begun[0]?.plan.pictures).toEqual({ kind: 'camera', deviceId: 'b' });
  });
});
