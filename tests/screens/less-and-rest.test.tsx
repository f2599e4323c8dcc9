// @vitest-environment jsdom
import { act, cleanup, fireEvent, screen, waitFor } from '@testing-library/react';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Prescription } from '../../src/dose/prescription.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import { newId } from '../../src/record/new-id.ts';
import { useChoices } from '../../src/screens/choose/choices.ts';
import { entryNow } from '../../src/screens/day/entry-now.ts';
import { ALL_NO } from './diary-builder.ts';
import { fakeServices } from './fake-services.ts';
import { press, shownAt } from './shown.tsx';

afterEach(() => {
  cleanup();
  vi.useRealTimers();
  useChoices.getState().choose({ messages: false });
});

/** The clock stands at noon, when sets may come, and moves on only with the test. */
function atNoon() {
  const noon = new Date();
  noon.setHours(12, 0, 0, 0);
  vi.useFakeTimers({
    now: noon,
    shouldAdvanceTime: true,
    toFake: ['setTimeout', 'setInterval', 'clearTimeout', 'clearInterval', 'Date', 'performance'],
  });
}

function planned(...exercises: readonly ('foot-tap' | 'heel-stand' | 'nerve-glide')[]) {
  const fake = fakeServices();
  const prescription: Prescription = {
    ...entryNow(),
    kind: 'prescription',
    by: { role: 'therapist', name: 'Wilma Beispiel (invented)' },
    revises: null,
    items: exercises.map((exercise) => ({
      ...startingDose(exercise, newId(), ['left']),
      // Twice a day, one after the other: the rest between them is short.
      ...(exercise === 'heel-stand' ? { start: { setsADay: 2, repsASet: 5, holdS: 5 } } : {}),
    })),
    selfChecks: { checks: [], sides: [], everyDays: 7 },
  };
  fake.entries.push(prescription, { ...entryNow(), kind: 'red-flags', answers: ALL_NO });
  const [item] = prescription.items;
  if (!item) throw new Error('planned requires an exercise, got none');
  return { ...fake, prescription, item };
}

describe('doing less', () => {
  test('fewer repetitions for one set go into it, more than the dose do not', async () => {
    const { services, item, begun } = planned('foot-tap');
    shownAt(`/today/go/${item.id}/left`, services);
    const reps = await screen.findByRole('textbox', { name: /How many/ });
    fireEvent.keyDown(reps, { key: 'ArrowUp' });
    expect((reps as HTMLInputElement).value).toBe('15');
    for (let i = 0; i < 5; i += 1) fireEvent.keyDown(reps, { key: 'ArrowDown' });
    await press('Start the camera');
    expect(begun[0]?.plan).toMatchObject({ targetReps: 10, guide: { target: { kind: 'full' }, tempoS: 2, holdS: 0 } });
  });

  test('less from now on is said, asked and kept as the person’s own step back', async () => {
    const { services, item, entries, prescription } = planned('foot-tap');
    shownAt(`/today/go/${item.id}/left`, services);
    fireEvent.click(await screen.findByRole('button', { name: 'Do less from now on' }));
    expect(screen.getByText(/10 repetitions a set instead of 15/)).toBeTruthy();
    fireEvent.click(screen.getByRole('button', { name: 'Take this on' }));
    expect(await screen.findByText('10 times')).toBeTruthy();
    expect(entries.at(-1)).toMatchObject({
      kind: 'dose-step',
      prescriptionId: prescription.id,
      itemId: item.id,
      direction: 'back',
      by: 'patient',
      aboutDay: null,
      to: { setsADay: 3, repsASet: 10, holdS: 0 },
    });
  });

  test('there is no less than the least dose', async () => {
    const { services, item, entries, prescription } = planned('nerve-glide');
    const least = { setsADay: 1, repsASet: 5, holdS: 0 };
    entries.push({
      ...entryNow(),
      kind: 'dose-step',
      prescriptionId: prescription.id,
      itemId: item.id,
      direction: 'back',
      from: item.start,
      to: least,
      aboutDay: null,
      reason: 'chosen',
      by: 'patient',
    });
    shownAt(`/today/go/${item.id}/left`, services);
    expect(await screen.findByText('5 times')).toBeTruthy();
    expect(screen.queryByRole('button', { name: 'Do less from now on' })).toBeNull();
  });
});

test('a short rest is counted down on today, its end is heard, and the set may begin', async () => {
  atNoon();
  const { services, item, entries } = planned('heel-stand');
  entries.push({
    ...entryNow(),
    kind: 'hand-set',
    exercise: 'heel-stand',
    side: 'left',
    itemId: item.id,
    reps: 5,
    counted: 'by-hand',
  });
  const { said, played } = shownAt('/today', services);
  expect((await screen.findByRole('timer')).textContent).toMatch(/^Rest: (1:00|0:5\d)$/);
  expect(screen.queryByRole('link', { name: /^Start: / })).toBeNull();
  await act(() => vi.advanceTimersByTimeAsync(62_000));
  expect(said).toEqual(['You can do the next set now.']);
  expect(played).toEqual(['rested']);
  expect((await screen.findByText('You can do the next set now.')).getAttribute('role')).toBe('status');
  expect(await screen.findByRole('link', { name: /^Start: / })).toBeTruthy();
  expect(screen.queryByRole('timer')).toBeNull();
});

test('a clock that is set back by an hour in a rest makes it no longer: it is counted on, also on another screen meanwhile', async () => {
  atNoon();
  const { services, item, entries } = planned('heel-stand');
  entries.push({
    ...entryNow(),
    kind: 'hand-set',
    exercise: 'heel-stand',
    side: 'left',
    itemId: item.id,
    reps: 5,
    counted: 'by-hand',
  });
  const { said, unmount } = shownAt('/today', services);
  const left = async () => (await screen.findByRole('timer')).textContent;
  expect(await left()).toMatch(/^Rest: (1:00|0:5\d)$/);
  await act(() => vi.advanceTimersByTimeAsync(20_500));
  vi.setSystemTime(Date.now() - 3_600_000);
  await act(() => vi.advanceTimersByTimeAsync(500));
  expect(await left()).toMatch(/^Rest: 0:3\d$/);
  unmount();
  await act(() => vi.advanceTimersByTimeAsync(10_000));
  shownAt('/today', services);
  expect(await left()).toMatch(/^Rest: 0:2\d$/);
  expect(said).toEqual([]);
  await act(() => vi.advanceTimersByTimeAsync(31_000));
  expect(await screen.findByRole('link', { name: /^Start: / })).toBeTruthy();
});

describe('messages that a set is due', () => {
  test('are asked for, then told once when the set becomes due, and not while a set runs', async () => {
    atNoon();
    const { services, item, entries, told } = planned('heel-stand');
    entries.push({
      ...entryNow(),
      kind: 'hand-set',
      exercise: 'heel-stand',
      side: 'left',
      itemId: item.id,
      reps: 5,
      counted: 'by-hand',
    });
    shownAt('/today', services);
    fireEvent.click(await screen.findByRole('button', { name: 'Tell me here when a set is due' }));
    expect(await screen.findByText(/This page tells you/)).toBeTruthy();
    await act(() => vi.advanceTimersByTimeAsync(200_000));
    expect(told.shown).toEqual(['Now: Heel stands, left leg.']);
  });

  test('that the browser refuses are said to be refused', async () => {
    const { services } = planned('foot-tap');
    const messages = { state: () => 'default' as const, ask: async () => 'denied' as const, show: () => undefined };
    shownAt('/today', { ...services, messages });
    fireEvent.click(await screen.findByRole('button', { name: 'Tell me here when a set is due' }));
    expect(await screen.findByText('Your browser does not allow messages from this page.')).toBeTruthy();
    expect(useChoices.getState().choices.messages).toBe(false);
  });

  test('are not offered where there are none', async () => {
    const { services, told } = planned('foot-tap');
    told.state = 'unsupported';
    shownAt('/today', services);
    await waitFor(() => expect(screen.getAllByRole('link', { name: /^Start: / }).length).toBe(1));
    expect(screen.queryByRole('button', { name: 'Tell me here when a set is due' })).toBeNull();
  });
});
