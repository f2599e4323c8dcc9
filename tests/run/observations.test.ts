import { expect, test } from 'vitest';
import type { BetweenFrame, FrameTaken } from '../../src/capture/between-frames.ts';
import type { Observation } from '../../src/measure/observation.ts';
import type { FrameSource } from '../../src/run/frame-source.ts';
import { observations, PoseFailed } from '../../src/run/observations.ts';
import { type Ms, ms } from '../../src/units.ts';

const seenAt = (tMs: Ms): Observation => ({ tMs, landmarks: null, motion: null, camera: null, brightness: null });
const betweenAt = (tMs: number): BetweenFrame => ({ tMs: ms(tMs), luma: { width: 1, height: 1, data: new Uint8Array(1) } });
const frameAt = (tMs: number, between: readonly number[]): FrameTaken => ({
  tMs: ms(tMs),
  turn: 0,
  image: { close: () => undefined } as VideoFrame,
  between: between.map(betweenAt),
});

/** A camera's frames, each with two pictures since the one before. */
const source: FrameSource = {
  size: { width: 640, height: 480 },
  live: true,
  stop: () => undefined,
  async *frames() {
    yield frameAt(100, [33, 67]);
    yield frameAt(200, [133, 167]);
  },
};

const follow = async (between: readonly BetweenFrame[]) => between.map(({ tMs }) => seenAt(tMs));
const begin = async () => undefined;

test('what was followed in the pictures between is told while their frame is still in work', async () => {
  const asked: string[] = [];
  let finish: (seen: Observation) => void = () => undefined;
  const observer = {
    begin,
    follow: (between: readonly BetweenFrame[]) => {
      asked.push('follow');
      return follow(between);
    },
    observe: () => {
      asked.push('observe');
      return new Promise<Observation>((resolve) => {
        finish = resolve;
      });
    },
  };
  const seen = observations(source, observer, new AbortController().signal);
  expect((await seen.next()).value?.tMs).toBe(33);
  expect((await seen.next()).value?.tMs).toBe(67);
  // The frame has been handed over all the same: the pose model does not wait for whoever listens.
  expect(asked).toEqual(['follow', 'observe']);
  finish(seenAt(ms(100)));
  expect((await seen.next()).value?.tMs).toBe(100);
  expect((await seen.next()).value?.tMs).toBe(133);
  expect(asked).toEqual(['follow', 'observe', 'follow', 'observe']);
  await seen.return();
});

test('all comes in order of time', async () => {
  const times: number[] = [];
  const observer = { begin, follow, observe: async ({ tMs }: FrameTaken) => seenAt(tMs) };
  for await (const { tMs } of observations(source, observer, new AbortController().signal)) times.push(tMs);
  expect(times).toEqual([33, 67, 100, 133, 167, 200]);
});

test('a stop ends it while pictures between are being followed', async () => {
  const abort = new AbortController();
  const never = () => new Promise<never>(() => undefined);
  const next = observations(source, { begin, follow: never, observe: never }, abort.signal).next();
  abort.abort();
  expect((await next).done).toBe(true);
});

test.each(['follow', 'observe'] as const)('a model that fails when asked to %s is told of as such', async (broken) => {
  const failing = () => Promise.reject(new Error('out of memory'));
  const observer = { begin, follow, observe: async ({ tMs }: FrameTaken) => seenAt(tMs), [broken]: failing };
  const watch = async () => {
    for await (const _ of observations(source, observer, new AbortController().signal));
  };
  await expect(watch()).rejects.toThrow(PoseFailed);
});
