// @vitest-environment jsdom
import { cleanup, fireEvent, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, test } from 'vitest';
import { fail } from '../../src/result.ts';
import { deg } from '../../src/units.ts';
import { fakeServices } from './fake-services.ts';
import { aRep, aSet } from './fake-sets.ts';
import { shownAt } from './shown.tsx';

afterEach(cleanup);

const reps = [aRep(1), aRep(2, { complete: false, rangeDeg: deg(4), flags: ['partial'] }), aRep(3, { flags: ['tracking-gap'] })];
const count = () => screen.getByText('Counted', { selector: 'dt' }).nextElementSibling?.textContent;
const rowOf = (n: number) => screen.getByRole('row', { name: new RegExp(`^${n} `) });

describe('the result of a set', () => {
  test('it shows the count against the dose, the range with its error, and each repetition', async () => {
    shownAt('/set/set-1', fakeServices([aSet(reps)]).services);
    await screen.findByRole('heading', { name: 'Foot taps, left leg' });
    expect(count()).toBe('2 of 10');
    expect(screen.getByText('15.0° ± 2.0°', { selector: 'dd bdi' }).getAttribute('dir')).toBe('ltr');
    expect(within(rowOf(2)).getByText('Not counted')).toBeTruthy();
    expect(within(rowOf(3)).getByText('leg lost for a moment')).toBeTruthy();
  });

  test('a repetition is struck out and put back; the measured count stays in sight', async () => {
    const { services, sets } = fakeServices([aSet(reps)]);
    shownAt('/set/set-1', services);
    fireEvent.click(await screen.findByRole('button', { name: 'Strike out: repetition 3' }));
    const back = await screen.findByRole('button', { name: 'Put back: repetition 3' });
    expect(count()).toBe('1 of 10');
    expect(screen.getByText('Counted by Evenside: 2. With your changes: 1.')).toBeTruthy();
    expect(sets.get('set-1')?.reps).toEqual(reps);
    fireEvent.click(back);
    await waitFor(() => expect(count()).toBe('2 of 10'));
    expect(sets.get('set-1')?.edits.map((edit) => edit.kind)).toEqual(['strike', 'restore']);
  });

  test('a missed one is added, counted, and can be taken away again', async () => {
    shownAt('/set/set-1', fakeServices([aSet(reps)]).services);
    fireEvent.click(await screen.findByRole('button', { name: 'Add a missed one' }));
    await waitFor(() => expect(count()).toBe('3 of 10'));
    expect(within(rowOf(4)).getByText('Added by hand')).toBeTruthy();
    fireEvent.click(screen.getByRole('button', { name: 'Strike out: repetition 4' }));
    await waitFor(() => expect(count()).toBe('2 of 10'));
  });

  test('a change that could not be stored says so and changes nothing', async () => {
    const { services } = fakeServices([aSet(reps)], { change: async () => fail({ kind: 'store-full' }) });
    shownAt('/set/set-1', services);
    fireEvent.click(await screen.findByRole('button', { name: 'Strike out: repetition 1' }));
    expect((await screen.findByRole('alert')).textContent).toContain('no room left');
    expect(count()).toBe('2 of 10');
  });

  test('an interrupted set says so and shows what there is', async () => {
    shownAt('/set/set-1', fakeServices([aSet(reps, { state: 'interrupted', result: null })]).services);
    expect(await screen.findByText(/interrupted before its end/)).toBeTruthy();
    expect(screen.getAllByRole('row')).toHaveLength(4);
  });

  test('warnings stand in words before the numbers', async () => {
    const set = aSet(reps);
    const result = set.result && { ...set.result, quality: { cameraTurnDeg: deg(20), warnings: ['camera-turned'] as const } };
    shownAt('/set/set-1', fakeServices([{ ...set, result }]).services);
    expect(await screen.findByText(/did not look straight from the side/)).toBeTruthy();
  });

  test('a set that only this page holds says that it is not stored', async () => {
    const first = { store: async () => fail({ kind: 'store-full' as const }) };
    const { services } = fakeServices([aSet(reps, { onDisk: false })]);
    let full = true;
    shownAt('/set/set-1', { ...services, store: (id) => (full ? first.store() : services.store(id)) });
    expect(await screen.findByText(/^The set was measured, but could not be stored/)).toBeTruthy();
    expect(screen.getByRole('button', { name: 'Save it as a file' })).toBeTruthy();
    fireEvent.click(screen.getByRole('button', { name: 'Store it now' }));
    await waitFor(() => expect(screen.getByRole('alert').textContent).toContain('no room left'));
    expect(count()).toBe('2 of 10');
    full = false;
    fireEvent.click(screen.getByRole('button', { name: 'Store it now' }));
    await waitFor(() => expect(screen.queryByText(/could not be stored/)).toBeNull());
    expect(count()).toBe('2 of 10');
  });

  test('an unknown set gives a sentence and a way back', async () => {
    shownAt('/set/nowhere', fakeServices().services);
    expect(await screen.findByRole('heading', { name: 'This set is not stored here.' })).toBeTruthy();
    expect(screen.getByRole('link', { name: 'Back' })).toBeTruthy();
  });

  test('a set is deleted only after a second yes', async () => {
    const { services, sets } = fakeServices([aSet(reps)]);
    shownAt('/set/set-1', services);
    fireEvent.click(await screen.findByRole('button', { name: 'Delete this set' }));
    expect(sets.size).toBe(1);
    fireEvent.click(screen.getByRole('button', { name: 'Yes, delete' }));
    await screen.findByText(/Your sets will be listed here/);
    expect(sets.size).toBe(0);
  });
});
