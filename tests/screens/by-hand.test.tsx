// @vitest-environment jsdom
import { act, cleanup, fireEvent, screen } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { fail } from '../../src/result.ts';
import { entryNow } from '../../src/screens/day/entry-now.ts';
import { ALL_NO } from './diary-builder.ts';
import { fakeServices } from './fake-services.ts';
import { press, shownAt } from './shown.tsx';

afterEach(cleanup);

function asked() {
  const fake = fakeServices();
  fake.entries.push({ ...entryNow(), kind: 'red-flags', answers: ALL_NO });
  return fake;
}

describe('a set that nobody prescribed, without the camera', () => {
  test('is counted by tapping and kept without a line', async () => {
    const { services, entries } = asked();
    shownAt('/count/foot-tap/left', services);
    fireEvent.click(await screen.findByRole('button', { name: /One more/ }));
    fireEvent.click(screen.getByRole('button', { name: 'Done' }));
    expect(await screen.findByRole('button', { name: 'Keep this' })).toBeTruthy();
    expect(entries.at(-1)).toMatchObject({ kind: 'hand-set', exercise: 'foot-tap', reps: 1, itemId: null, counted: 'by-hand' });
  });

  test('is begun only after the red-flag questions', async () => {
    shownAt('/count/foot-tap/left', fakeServices().services);
    await press('None of these');
    expect(await screen.findByRole('button', { name: /One more/ })).toBeTruthy();
  });

  test('is none on a stopped day', async () => {
    const fake = fakeServices();
    fake.entries.push({ ...entryNow(), kind: 'red-flags', answers: { ...ALL_NO, 'both-legs-weak': 'yes' } });
    shownAt('/count/foot-tap/left', fake.services);
    expect(await screen.findByText('No exercises now: get help at once')).toBeTruthy();
    expect(screen.queryByRole('button', { name: /One more/ })).toBeNull();
  });

  test('an exercise that there is not is said to be none', async () => {
    shownAt('/count/cartwheel/left', asked().services);
    expect(await screen.findByRole('heading', { name: 'This is not due now.' })).toBeTruthy();
  });

  test('a camera that fails leads to it', async () => {
    const { services, begun } = asked();
    shownAt('/choose/camera', services);
    const start = await screen.findByRole('button', { name: 'Start the camera' });
    await vi.waitFor(() => expect(start.hasAttribute('disabled')).toBe(false));
    fireEvent.click(start);
    await screen.findByRole('button', { name: /Stop/ });
    await act(() => begun[0]?.end(fail({ kind: 'camera-denied' })) ?? Promise.resolve());
    fireEvent.click(screen.getByRole('link', { name: 'Count without the camera' }));
    expect(await screen.findByRole('button', { name: /One more/ })).toBeTruthy();
  });
});

describe('counting by a beat', () => {
  beforeEach(() => {
    vi.useFakeTimers({
      shouldAdvanceTime: true,
      toFake: ['setTimeout', 'setInterval', 'clearTimeout', 'clearInterval', 'performance'],
    });
  });
  afterEach(() => {
    vi.useRealTimers();
  });
  /** Time goes by in small steps: what a page does at one moment decides what it waits for next. */
  const pass = async (ms: number) => {
    for (let gone = 0; gone < ms; gone += 100) await act(() => vi.advanceTimersByTimeAsync(100));
  };

  async function beating() {
    const { services, entries } = asked();
    const shown = shownAt('/count/foot-tap/left', services);
    fireEvent.click(await screen.findByRole('button', { name: 'Count by a beat instead' }));
    return { ...shown, entries };
  }

  test('after a lead it counts each repetition aloud, and is kept as counted by it', async () => {
    const { said, played, entries } = await beating();
    fireEvent.click(screen.getByRole('button', { name: 'Start the beat' }));
    await pass(4900);
    expect(said).toEqual([]);
    expect(played.filter((tone) => tone === 'second')).toHaveLength(5);
    // Foot taps are paced at two seconds each.
    await pass(4300);
    expect(said).toEqual(['1', '2']);
    expect(played).toContain('up');
    expect(played).toContain('down');
    fireEvent.click(screen.getByRole('button', { name: 'Pause' }));
    await pass(10_000);
    expect(said).toEqual(['1', '2']);
    fireEvent.click(screen.getByRole('button', { name: 'Done' }));
    await screen.findByRole('button', { name: 'Keep this' });
    expect(entries.at(-1)).toMatchObject({ kind: 'hand-set', reps: 2, counted: 'by-metronome' });
  });

  test('the space bar starts and pauses it; it goes on with the count where it was', async () => {
    const { said } = await beating();
    fireEvent.keyDown(document.body, { key: ' ' });
    await pass(7300);
    fireEvent.keyDown(document.body, { key: ' ' });
    await pass(5000);
    fireEvent.keyDown(document.body, { key: ' ' });
    await pass(7300);
    expect(said).toEqual(['1', '2']);
  });

  test('it ends with the dose, and says so', async () => {
    const { said } = await beating();
    fireEvent.click(screen.getByRole('button', { name: 'Start the beat' }));
    await pass(40_000);
    expect(said.at(-1)).toBe('That’s all 10. You can rest.');
    expect(said).toHaveLength(10);
    expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Start the beat' }).disabled).toBe(true);
  });

  test('slower is a press away', async () => {
    const { said } = await beating();
    fireEvent.keyDown(screen.getByRole('textbox', { name: 'Seconds for each' }), { key: 'ArrowUp' });
    fireEvent.click(screen.getByRole('button', { name: 'Start the beat' }));
    await pass(7500);
    expect(said).toEqual([]);
    await pass(1000);
    expect(said).toEqual(['1']);
  });
});
