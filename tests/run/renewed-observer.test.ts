import { describe, expect, test } from 'vitest';
import { footTap } from '../../src/exercises/foot-tap.ts';
import type { SegmentTurn } from '../../src/flow/leg-motion.ts';
import type { Observation } from '../../src/measure/observation.ts';
import { renewedObserver } from '../../src/run/renewed-observer.ts';
import type { FrameObserver } from '../../src/run/session.ts';
import { deg, ms, px, ratio } from '../../src/units.ts';
import { pictures } from './scripted-set.ts';

const SPEC = { exercise: footTap, side: 'left', head: 'find' } as const;

/** Sees a leg of one anchor, and a camera that has turned by `rollDeg`; fails from its `diesAt`-th picture on. */
function observer(diesAt: number, rollDeg = 0): FrameObserver & { readonly begun: () => number } {
  let seen = 0;
  let begun = 0;
  const foot: SegmentTurn = { turnDeg: deg(1), seDeg: deg(0.1), zncc: ratio(0.9), anchor: 1 };
  return {
    begun: () => begun,
    begin: async () => {
      begun += 1;
    },
    follow: async (between) => {
      if (seen >= diesAt) throw new Error('dead');
      return between.map(({ tMs }) => ({ tMs, landmarks: null, motion: null, camera: null, brightness: 1 }));
    },
    observe: async ({ tMs }): Promise<Observation> => {
      if (seen++ >= diesAt) throw new Error('dead');
      const camera = { rotationDeg: deg(rollDeg), shiftX: px(0), shiftY: px(0), scale: ratio(1), agreement: ratio(1), points: 9 };
      return { tMs, landmarks: null, motion: { foot, shank: null, thigh: null }, camera, brightness: 50 };
    },
  };
}

describe('whoever looks at the pictures fails in the middle of a set', () => {
  test('another one takes its place; what was lost is as if nobody had been seen; anchors and the camera’s turn go on', async () => {
    const { frame } = pictures();
    const others = [observer(99, 2)];
    const said: boolean[] = [];
    const first = observer(2, 5);
    const renewed = renewedObserver(first, {
      renew: async () => others.shift() ?? null,
      onRenewing: (renewing) => said.push(renewing),
    });
    const [second] = others;
    await renewed.begin(SPEC);
    const seen: Observation[] = [];
    for (const tMs of [0, 33, 66, 99]) seen.push(await renewed.observe(frame(tMs)));
    expect(seen.map(({ motion }) => motion?.foot?.anchor ?? null)).toEqual([1, 1, null, 2]);
    expect(seen.map(({ camera }) => camera?.rotationDeg ?? null)).toEqual([5, 5, null, 7]);
    expect(seen[2]).toEqual({ tMs: 66, landmarks: null, motion: null, camera: null, brightness: null });
    expect(said).toEqual([true, false]);
    expect([first.begun(), second?.begun()]).toEqual([1, 1]);
  });

  test('two questions that fail together take one other', async () => {
    const { frame } = pictures();
    let renewals = 0;
    const renewed = renewedObserver(observer(0), {
      renew: async () => {
        renewals += 1;
        return observer(99);
      },
      onRenewing: () => undefined,
    });
    await renewed.begin(SPEC);
    const luma = { width: 1, height: 1, data: new Uint8Array(1) };
    const [followed, seen] = await Promise.all([renewed.follow([{ tMs: ms(10), luma }]), renewed.observe(frame(33))]);
    expect(followed).toEqual([]);
    expect(seen.motion).toBeNull();
    expect(renewals).toBe(1);
  });

  test('that fails again and again is given up after three, and the set is told why', async () => {
    const { frame } = pictures();
    let renewals = 0;
    const renewed = renewedObserver(observer(0), {
      renew: async () => {
        renewals += 1;
        return observer(0);
      },
      onRenewing: () => undefined,
    });
    await renewed.begin(SPEC);
    for (const tMs of [0, 33, 66]) expect((await renewed.observe(frame(tMs))).landmarks).toBeNull();
    await expect(renewed.observe(frame(99))).rejects.toThrow('dead');
    expect(renewals).toBe(3);
  });

  test('of which there is no other ends the set as before', async () => {
    const renewed = renewedObserver(observer(0), { renew: async () => null, onRenewing: () => undefined });
    await renewed.begin(SPEC);
    await expect(renewed.observe(pictures().frame(0))).rejects.toThrow('dead');
  });
});
