import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { newestFrame } from '../../src/capture/newest-frame.ts';
import { pictures } from '../run/scripted-set.ts';

describe('the newest frame', () => {
  test('is given at once when it is there, and when it comes otherwise', async () => {
    const { frame } = pictures();
    const box = newestFrame();
    box.offer(frame(1));
    expect((await box.take())?.tMs).toBe(1);
    const waiting = box.take();
    box.offer(frame(2));
    expect((await waiting)?.tMs).toBe(2);
    expect(box.dropped()).toBe(0);
  });

  test('replaces the one that was not taken, which is closed', async () => {
    const { all, frame } = pictures();
    const box = newestFrame();
    for (const tMs of [1, 2, 3]) box.offer(frame(tMs));
    expect((await box.take())?.tMs).toBe(3);
    expect(all.map(({ closed }) => closed)).toEqual([1, 1, 0]);
    expect(box.dropped()).toBe(2);
  });

  test('lets whoever asked for them have the late ones, in order', async () => {
    const { all, frame } = pictures();
    const late: number[] = [];
    const box = newestFrame(({ tMs }) => late.push(tMs));
    for (const tMs of [1, 2, 2, 3]) box.offer(frame(tMs));
    expect((await box.take())?.tMs).toBe(3);
    expect(late).toEqual([1, 2]);
    // Theirs to close; what does not advance is closed here.
    expect(all.map(({ closed }) => closed)).toEqual([0, 0, 1, 0]);
    expect(box.dropped()).toBe(1);
  });

  test('whose time does not advance is closed', async () => {
    const { all, frame } = pictures();
    const box = newestFrame();
    for (const tMs of [5, 5, 4]) box.offer(frame(tMs));
    expect((await box.take())?.tMs).toBe(5);
    expect(all.map(({ closed }) => closed)).toEqual([0, 1, 1]);
  });

  test('after the end there is none, and the cause of the end is thrown once', async () => {
    const { all, frame } = pictures();
    const box = newestFrame();
    box.offer(frame(1));
    box.end(new Error('pulled out'));
    box.end();
    box.offer(frame(2));
    await expect(box.take()).rejects.toThrow('pulled out');
    expect(await box.take()).toBeNull();
    expect(all.map(({ closed }) => closed)).toEqual([1, 1]);
  });

  test('the end reaches whoever waits', async () => {
    const [quiet, loud] = [newestFrame(), newestFrame()];
    const [one, other] = [quiet.take(), loud.take()];
    quiet.end();
    loud.end(new Error('pulled out'));
    expect(await one).toBeNull();
    await expect(other).rejects.toThrow('pulled out');
  });

  test('in any order of giving and taking: times increase, and every picture is either taken or closed, once', async () => {
    const steps = fc.array(fc.oneof(fc.integer({ min: 0, max: 50 }), fc.constant('take' as const)), { maxLength: 40 });
    await fc.assert(
      fc.asyncProperty(steps, async (script) => {
        const { all, frame } = pictures();
        const box = newestFrame();
        const taken: number[] = [];
        let taking: Promise<void> | null = null;
        for (const step of script) {
          if (step !== 'take') box.offer(frame(step));
          else
            taking ??= box.take().then((next) => {
              if (next) taken.push(next.tMs);
              taking = null;
            });
          await Promise.resolve();
        }
        box.end();
        await taking;
        expect(taken).toEqual(taken.toSorted((a, b) => a - b));
        expect(new Set(taken).size).toBe(taken.length);
        expect(all.filter(({ closed }) => closed === 0).length).toBe(taken.length);
        expect(all.every(({ closed }) => closed <= 1)).toBe(true);
        expect(box.dropped()).toBe(all.length - taken.length);
      }),
    );
  });
});
