import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { startSession } from '../../src/run/session.ts';
import { rep } from '../record/set-builders.ts';
import { wentWell } from '../record/went-well.ts';
import { liveCamera } from './live-camera.ts';
import { fakeClient, fileSource, pictures, scriptedMeasure } from './scripted-set.ts';
import { heard, optionsOf, settle } from './session-options.ts';

test('a live set that ends by itself leaves the pictures after it alone', async () => {
  const { all, frame } = pictures();
  const to = heard();
  const source = { ...fileSource(frame, 100), live: true };
  const set = wentWell(
    await startSession(optionsOf({ source }, to), scriptedMeasure({ readyAt: 0, repsAt: [3], endsAt: 5 })).done,
  );
  expect(set).toMatchObject({ state: 'finished', reps: [rep(1)] });
  expect(to.counts.length).toBe(6);
  await settle();
  expect(all.length).toBeLessThan(9);
  expect(all.every(({ closed }) => closed === 1)).toBe(true);
});

describe('with a clock of the test’s own', () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  test('a live set looks whole at the newest picture only, measures those between too, and closes every picture once', async () => {
    const { all, frame } = pictures();
    const seen: number[] = [];
    const source = liveCamera(frame);
    // A model that needs 100 ms a frame, three pictures' time.
    const client = fakeClient((tMs) => {
      seen.push(tMs);
      return new Promise((resolve) => setTimeout(resolve, 100));
    });
    const measured: number[] = [];
    const options = optionsOf({ source, client, onObservation: ({ tMs }) => measured.push(tMs) });
    const session = startSession(options, scriptedMeasure({ readyAt: 0, repsAt: [2] }));
    await vi.advanceTimersByTimeAsync(3000);
    session.stop();
    expect(wentWell(await session.done).state).toBe('finished');
    await vi.advanceTimersByTimeAsync(200);
    expect(client.most()).toBe(1);
    expect(all.length).toBe(90);
    expect(seen.length).toBeGreaterThanOrEqual(22);
    expect(seen.length).toBeLessThanOrEqual(31);
    // Every picture but those after the last one that came back, in order.
    expect(measured).toEqual(Array.from({ length: measured.length }, (_, i) => 33 * (i + 1)));
    expect(measured.length).toBeGreaterThan(82);
    // The one that came last was never taken.
    expect(source.dropped()).toBeLessThanOrEqual(1);
    expect(all.every(({ closed }) => closed === 1)).toBe(true);
    // What the model gets is fresh: the newest picture when it became free.
    const steps = seen.slice(1).map((tMs, i) => tMs - (seen[i] as number));
    expect(Math.max(...steps)).toBeLessThanOrEqual(132);
  });
});
