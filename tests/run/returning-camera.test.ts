import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { CameraError } from '../../src/capture/camera.ts';
import { CameraLost } from '../../src/capture/camera-frames.ts';
import { newestFrame } from '../../src/capture/newest-frame.ts';
import { fail, ok, type Result } from '../../src/result.ts';
import type { FrameSource } from '../../src/run/frame-source.ts';
import { returningCamera } from '../../src/run/returning-camera.ts';
import { BREAK_MS } from '../../src/run/set-clock.ts';
import { type FakePicture, pictures, SIZE } from './scripted-set.ts';

/** A camera whose pictures and whose end the test gives. */
function camera(frame: ReturnType<typeof pictures>['frame'], size = SIZE) {
  const box = newestFrame();
  let stops = 0;
  const source: FrameSource = {
    size,
    live: true,
    stop: () => {
      stops += 1;
      box.end();
    },
    async *frames() {
      for (let next = await box.take(); next; next = await box.take()) yield next;
    },
  };
  return { source, show: (tMs: number) => box.offer(frame(tMs)), lose: (cause: Error) => box.end(cause), stops: () => stops };
}

const settle = () => vi.advanceTimersByTimeAsync(0);

/** A set that takes its pictures as they come. */
function watched() {
  const { all, frame } = pictures();
  const first = camera(frame);
  const told: string[] = [];
  const answers: Result<FrameSource, CameraError>[] = [];
  let change: () => void = () => undefined;
  let asked = 0;
  const world = { visible: true, breaks: 0 };
  const source = returningCamera(first.source, {
    reopen: async () => {
      asked += 1;
      return answers.shift() ?? fail({ kind: 'camera-gone' });
    },
    onAway: (why) => told.push(why?.kind ?? 'back'),
    onBreak: () => {
      world.breaks += 1;
    },
    watchChanges: (onChange) => {
      change = onChange;
      return () => {
        change = () => undefined;
      };
    },
    visible: () => world.visible,
    wallMs: () => Date.now(),
  });
  const times: number[] = [];
  const done = (async () => {
    for await (const { tMs, image } of source.frames()) {
      times.push(tMs);
      image.close();
    }
  })();
  const outcome = done.then(
    () => 'ended',
    (cause: unknown) => cause,
  );
  return { all, frame, first, told, answers, change: () => change(), asked: () => asked, world, source, times, outcome };
}

const allClosed = (all: readonly FakePicture[]) => expect(all.map(({ closed }) => closed)).toEqual(all.map(() => 1));

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('a camera that goes away in the middle of a set', () => {
  test('goes on by itself once it is plugged in again; what was between takes the time of a break', async () => {
    const { all, frame, first, told, answers, change, times, source, outcome } = watched();
    first.show(0);
    await settle();
    first.show(33);
    await settle();
    first.lose(new CameraLost('unplugged'));
    await settle();
    expect(told).toEqual(['camera-lost', 'camera-gone']);
    await vi.advanceTimersByTimeAsync(500);
    const again = camera(frame);
    answers.push(ok(again.source));
    change();
    await settle();
    again.show(0);
    await settle();
    again.show(40);
    await settle();
    expect(told).toEqual(['camera-lost', 'camera-gone', 'back']);
    expect(times).toEqual([0, 33, 33 + BREAK_MS, 73 + BREAK_MS]);
    source.stop();
    expect(await outcome).toBe('ended');
    expect(again.stops()).toBeGreaterThan(0);
    allClosed(all);
  });

  test('held by another program, is tried again every few seconds', async () => {
    const { frame, first, told, answers, asked, source, outcome } = watched();
    first.show(0);
    await settle();
    answers.push(fail({ kind: 'camera-in-use' }), fail({ kind: 'camera-in-use' }), ok(camera(frame).source));
    first.lose(new CameraLost('unplugged'));
    await settle();
    expect(told).toEqual(['camera-lost', 'camera-in-use']);
    await vi.advanceTimersByTimeAsync(3000);
    expect(asked()).toBe(2);
    await vi.advanceTimersByTimeAsync(3000);
    expect(asked()).toBe(3);
    source.stop();
    expect(await outcome).toBe('ended');
  });

  test('forbidden midway, is not asked for again by itself, but by one press', async () => {
    const { frame, first, told, answers, asked, source, times, outcome } = watched();
    first.show(0);
    await settle();
    answers.push(fail({ kind: 'camera-denied', by: 'person' }));
    first.lose(new CameraLost('unplugged'));
    await vi.advanceTimersByTimeAsync(60_000);
    expect(told).toEqual(['camera-lost', 'camera-denied']);
    expect(asked()).toBe(1);
    const again = camera(frame);
    answers.push(ok(again.source));
    source.retry();
    await settle();
    again.show(0);
    await settle();
    expect(told.at(-1)).toBe('back');
    expect(times).toEqual([0, BREAK_MS]);
    source.stop();
    expect(await outcome).toBe('ended');
  });

  test('and away still when the set is stopped, ends it as usual, and asks for no camera any more', async () => {
    const { first, asked, source, outcome } = watched();
    first.show(0);
    await settle();
    first.lose(new CameraLost('unplugged'));
    await settle();
    source.stop();
    expect(await outcome).toBe('ended');
    const before = asked();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(asked()).toBe(before);
  });

  test('and comes back with pictures of another shape breaks the set off, since points would not compare', async () => {
    const { frame, first, answers, outcome } = watched();
    first.show(0);
    await settle();
    const other = camera(frame, { width: 480, height: 640 });
    answers.push(ok(other.source));
    first.lose(new CameraLost('unplugged'));
    expect(await outcome).toMatchObject({ name: 'CameraLost', why: 'turned' });
    expect(other.stops()).toBeGreaterThan(0);
  });
});

describe('a camera that says nothing', () => {
  test('for five seconds is opened anew', async () => {
    const { frame, first, told, answers, times, source, outcome } = watched();
    first.show(0);
    const again = camera(frame);
    answers.push(ok(again.source));
    await vi.advanceTimersByTimeAsync(4900);
    expect(told).toEqual([]);
    await vi.advanceTimersByTimeAsync(1100);
    expect(told).toEqual(['camera-lost']);
    again.show(0);
    await settle();
    expect(told).toEqual(['camera-lost', 'back']);
    expect(times).toEqual([0, BREAK_MS]);
    source.stop();
    expect(await outcome).toBe('ended');
  });

  test('while the page is hidden is waited for, and the break is told once it shows again', async () => {
    const { first, told, world, times, source, outcome } = watched();
    first.show(0);
    await settle();
    world.visible = false;
    await vi.advanceTimersByTimeAsync(120_000);
    world.visible = true;
    first.show(120_000);
    await settle();
    expect(told).toEqual([]);
    expect(world.breaks).toBe(1);
    expect(times).toEqual([0, BREAK_MS]);
    source.stop();
    expect(await outcome).toBe('ended');
  });

  test('because the last picture is still looked at is not opened anew', async () => {
    const { frame } = pictures();
    const first = camera(frame);
    const told: string[] = [];
    const source = returningCamera(first.source, {
      reopen: async () => fail({ kind: 'camera-gone' }),
      onAway: (why) => told.push(why?.kind ?? 'back'),
      onBreak: () => undefined,
      watchChanges: () => () => undefined,
      visible: () => true,
      wallMs: () => Date.now(),
    });
    const frames = source.frames();
    first.show(0);
    expect((await frames.next()).done).toBe(false);
    await vi.advanceTimersByTimeAsync(30_000);
    expect(told).toEqual([]);
    source.stop();
    expect((await frames.next()).done).toBe(true);
  });
});
