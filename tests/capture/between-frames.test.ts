import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { betweenFrames, MOST_BETWEEN } from '../../src/capture/between-frames.ts';
import type { Luma } from '../../src/capture/luma.ts';
import { pictures } from '../run/scripted-set.ts';

const LUMA: Luma = { width: 1, height: 1, data: Uint8Array.of(7) };
const settle = () => new Promise((resolve) => setImmediate(resolve));
const timesOf = (taken: readonly { readonly tMs: number }[]) => taken.map(({ tMs }) => tMs);

describe('pictures between', () => {
  test('leave their brightness, in order, and are closed', async () => {
    const { all, frame } = pictures();
    const between = betweenFrames(async (_, turn) => ({ ...LUMA, data: Uint8Array.of(turn) }));
    between.add(frame(1));
    between.add(frame(2));
    expect(await between.take()).toEqual([
      { tMs: 1, luma: { ...LUMA, data: Uint8Array.of(0) } },
      { tMs: 2, luma: { ...LUMA, data: Uint8Array.of(0) } },
    ]);
    expect(all.map(({ closed }) => closed)).toEqual([1, 1]);
    expect(await between.take()).toEqual([]);
    expect(between.dropped()).toBe(0);
  });

  test('that can not be read are left out, closed and counted', async () => {
    const { all, frame } = pictures();
    const between = betweenFrames(() => Promise.reject(new Error('a format nobody knows')));
    between.add(frame(1));
    expect(await between.take()).toEqual([]);
    expect(all.map(({ closed }) => closed)).toEqual([1]);
    expect(between.dropped()).toBe(1);
  });

  test('are open only while they are read, two at a time at most, also when reading hangs', async () => {
    const { all, frame } = pictures();
    const between = betweenFrames(() => new Promise(() => undefined));
    for (let i = 0; i < 20; i += 1) between.add(frame(i));
    await settle();
    expect(all.filter(({ closed }) => closed === 0).length).toBe(2);
    expect(between.dropped()).toBe(18);
  });

  test('are thinned evenly where there are too many', async () => {
    const { frame } = pictures();
    const between = betweenFrames(async () => LUMA);
    for (let i = 0; i < 30; i += 1) {
      between.add(frame(i * 33));
      await settle();
    }
    const times = timesOf(await between.take());
    expect(times.length).toBe(MOST_BETWEEN);
    expect([times[0], times.at(-1)]).toEqual([0, 29 * 33]);
    const steps = times.slice(1).map((t, i) => t - (times[i] as number));
    // Eight of thirty lie four pictures apart; none is missing much more than its neighbours.
    expect(Math.max(...steps)).toBeLessThanOrEqual(8 * 33);
    expect(between.dropped()).toBe(30 - MOST_BETWEEN);
  });

  test('whatever comes and is taken when: every picture is closed once, and is taken in order or counted as dropped', async () => {
    const steps = fc.array(fc.constantFrom('come', 'spoilt', 'take', 'wait'), { maxLength: 60 });
    await fc.assert(
      fc.asyncProperty(steps, async (script) => {
        const { all, frame } = pictures();
        const taken: number[] = [];
        let spoilt = false;
        const between = betweenFrames(async () => {
          if (spoilt) throw new Error('a format nobody knows');
          return LUMA;
        });
        for (const [i, step] of script.entries()) {
          spoilt = step === 'spoilt';
          if (step === 'take') taken.push(...timesOf(await between.take()));
          else if (step === 'wait') await settle();
          else between.add(frame(i));
        }
        taken.push(...timesOf(await between.take()));
        expect(taken).toEqual(taken.toSorted((a, b) => a - b));
        expect(all.every(({ closed }) => closed === 1)).toBe(true);
        expect(taken.length + between.dropped()).toBe(all.length);
      }),
    );
  });
});
