import { describe, expect, test } from 'vitest';
import { footTap } from '../../src/exercises/foot-tap.ts';
import { kneeStraighten } from '../../src/exercises/knee-straighten.ts';
import { legRaise } from '../../src/exercises/leg-raise.ts';
import { deg } from '../../src/units.ts';
import {
  type BodyPose,
  lying,
  mirrored,
  movementsAt,
  type RecordingOptions,
  recording,
  sitting,
  specOf,
} from './pose-builder.ts';
import { runSet } from './set-runner.ts';

const lifts = (ranges: readonly number[]) => (t: number) => movementsAt(t, { everyMs: 4000, lastsMs: 3000, ranges });
const raises = (over: Partial<BodyPose> = {}, extra: Partial<RecordingOptions> = {}) =>
  recording({ lastsMs: 14_000, bodyAt: (t) => lying({ thighDeg: lifts([40, 45, 50])(t), ...over }), ...extra });

/** What the rest before slow movements may be read too high: a thirtieth of their range. */
const nearly = (x: number | undefined, is: number, range: number) =>
  expect(Math.abs((x as number) - is)).toBeLessThan(range / 30);

test('leg raises: elevation from the rest, range and peak', () => {
  const { result } = runSet(specOf(legRaise), raises());
  expect(result.count).toBe(3);
  nearly(result.summary?.medianRangeDeg, 45, 45);
  nearly(result.summary?.medianPeakDeg, 45, 45);
});

test('a hip landmark that sits too low is taken out of a leg\u2019s elevation', () => {
  const bodyAt = (t: number) => lying({ thighDeg: lifts([40, 45, 50])(t) + 8 });
  const { result } = runSet(specOf(legRaise), recording({ lastsMs: 14_000, bodyAt }));
  nearly(result.summary?.medianPeakDeg, 45, 45);
  nearly(result.reps[0]?.startDeg, 0, 40);
  nearly(result.curve.angleDeg[30] as number, 0, 40);
});

test('a leg that rests on a cushion, far above the level, keeps its elevation', () => {
  const bodyAt = (t: number) => lying({ thighDeg: lifts([40, 45, 50])(t) + 25 });
  const { result } = runSet(specOf(legRaise), recording({ lastsMs: 14_000, bodyAt }));
  nearly(result.summary?.medianPeakDeg, 70, 45);
});

test('a knee that bends during a raise is reported and the raise kept', () => {
  const bodyAt = (t: number) => {
    const thighDeg = lifts([40, 45, 50])(t);
    return lying({ thighDeg, kneeDeg: t > 5500 && t < 9500 ? thighDeg * 0.7 : 2 });
  };
  const { result } = runSet(specOf(legRaise), recording({ lastsMs: 14_000, bodyAt }));
  expect(result.reps.map((r) => r.flags.includes('knee-bent'))).toEqual([false, true, false]);
  expect(result.reps).toHaveLength(3);
});

test('a knee that is always bent a little is no knee that bends', () => {
  const { result } = runSet(specOf(legRaise), raises({ kneeDeg: 20 }));
  expect(result.reps.flatMap((r) => r.flags)).toEqual([]);
});

test('knees that bend in every raise are reported in every one, however short the rests', () => {
  const thighAt = (t: number) => movementsAt(t, { everyMs: 3200, lastsMs: 3000, ranges: [50, 50, 50] });
  const { result } = runSet(
    specOf(legRaise),
    recording({ lastsMs: 12_000, bodyAt: (t) => lying({ thighDeg: thighAt(t), kneeDeg: thighAt(t) * 0.7 }) }),
  );
  expect(result.reps.map((r) => r.flags)).toEqual([['knee-bent'], ['knee-bent'], ['knee-bent']]);
});

test('straightening the knee: a falling angle, a positive range', () => {
  const bodyAt = (t: number) => sitting({ kneeDeg: 90 - lifts([60, 65, 20, 60])(t) });
  const { result } = runSet(specOf(kneeStraighten), recording({ lastsMs: 18_000, bodyAt }));
  expect(result.reps.map((r) => r.complete)).toEqual([true, true, false, true]);
  expect(result.reps[0]).toMatchObject({ flags: [] });
  nearly(result.reps[0]?.startDeg, 90, 60);
  nearly(result.reps[0]?.peakDeg, 30, 60);
  nearly(result.reps[0]?.rangeDeg, 60, 60);
});

describe.each([
  { name: 'foot taps', exercise: footTap, bodyAt: (t: number) => sitting({ ankleDeg: lifts([12, 11, 13])(t) - 4 }) },
  { name: 'leg raises', exercise: legRaise, bodyAt: (t: number) => lying({ thighDeg: lifts([40, 45, 50])(t), kneeDeg: 4 }) },
  {
    name: 'knee straightening',
    exercise: kneeStraighten,
    bodyAt: (t: number) => sitting({ kneeDeg: 90 - lifts([60, 65, 60])(t) }),
  },
])('$name', ({ exercise, bodyAt }) => {
  const seen = (change: Partial<BodyPose> = {}, flow = true) =>
    recording({ lastsMs: 14_000, bodyAt: (t) => ({ ...bodyAt(t), ...change }), flow });
  const numbers = (run: ReturnType<typeof runSet>) => run.result.reps.map((r) => [r.startDeg, r.peakDeg, r.rangeDeg]);
  const expectAlike = (a: ReturnType<typeof runSet>, b: ReturnType<typeof runSet>, within: number) => {
    expect(numbers(b)).toHaveLength(3);
    numbers(b)
      .flat()
      .forEach((x, i) => {
        expect(Math.abs(x - (numbers(a).flat()[i] as number))).toBeLessThan(within);
      });
  };
  const plain = runSet(specOf(exercise), seen());

  test('three repetitions, all complete', () => {
    expect(plain.result).toMatchObject({ count: 3, partialCount: 0 });
  });

  test('a mirrored picture with the other side gives the same angles', () => {
    expectAlike(plain, runSet(specOf(exercise, 'right'), seen().map(mirrored)), 1e-6);
  });

  test('the body elsewhere in the picture gives the same angles', () => {
    expectAlike(plain, runSet(specOf(exercise), seen({ shiftX: -23, shiftY: 17 })), 1e-6);
  });

  test('the body nearer to the camera gives the same angles', () => {
    expectAlike(plain, runSet(specOf(exercise), seen({ thighPx: 100 })), 1e-6);
  });

  test('with landmarks only, exact ones, the angles are the same', () => {
    expectAlike(plain, runSet(specOf(exercise), seen({}, false)), 0.5);
  });

  test('live, the angle at the top is within a degree of the finished one', () => {
    plain.result.reps.forEach((r) => {
      const i = plain.result.curve.tMs.findIndex((t) => t >= r.peakMs);
      const live = plain.views[i]?.angleDeg as number;
      const finished = plain.result.curve.angleDeg[i] as number;
      expect(Math.abs(live - finished)).toBeLessThan(1);
    });
  });
});

test('landmarks that shrink a foot\u2019s movement to a third do not shrink the range while the picture\u2019s motion is seen', () => {
  const tap = lifts([12, 11, 13]);
  const seenBy = recording({ lastsMs: 14_000, bodyAt: (t) => sitting({ ankleDeg: tap(t) / 3 }), flow: true });
  const truly = recording({ lastsMs: 14_000, bodyAt: (t) => sitting({ ankleDeg: tap(t) }), flow: true });
  const { result, views } = runSet(
    specOf(footTap),
    seenBy.map((o, i) => ({ ...o, motion: truly[i]?.motion ?? null })),
  );
  nearly(result.summary?.medianRangeDeg, 12, 12);
  expect(result.reps.every((r) => r.source === 'flow')).toBe(true);
  const highest = Math.max(...views.map((v) => v.angleDeg ?? Number.NEGATIVE_INFINITY));
  expect(highest).toBeGreaterThan(10);
});

test('a frame or two without motion cost the live angle nothing', () => {
  const tap = lifts([12, 11, 13]);
  const seenBy = recording({ lastsMs: 14_000, bodyAt: (t) => sitting({ ankleDeg: tap(t) / 3 }), flow: true });
  const truly = recording({ lastsMs: 14_000, bodyAt: (t) => sitting({ ankleDeg: tap(t) }), flow: true });
  const run = (lost: (i: number) => boolean) =>
    runSet(
      specOf(footTap),
      seenBy.map((o, i) => ({ ...o, motion: lost(i) ? null : (truly[i]?.motion ?? null) })),
    );
  const [whole, holey] = [run(() => false), run((i) => i % 20 < 2)];
  whole.views.forEach((v, i) => {
    if (i % 20 < 2 || v.angleDeg === null) return;
    expect(Math.abs((holey.views[i]?.angleDeg as number) - v.angleDeg)).toBeLessThan(0.5);
  });
});

test('what the exercise does not use may be unseen: a raise goes on by the motion of thigh and shank', () => {
  const all = raises({}, { flow: true });
  const hidden = all.map((o) =>
    o.tMs > 3000 && o.tMs < 4500 ? { ...o, landmarks: null, motion: o.motion && { ...o.motion, foot: null } } : o,
  );
  const { result } = runSet(specOf(legRaise), hidden);
  expect(result.count).toBe(3);
  expect(result.framesUsed).toBe(all.length);
});

test('every repetition carries an uncertainty, wider from landmarks than from the picture\u2019s motion', () => {
  const of = (flow: boolean) =>
    runSet(
      specOf(footTap),
      recording({ lastsMs: 14_000, bodyAt: (t) => sitting({ ankleDeg: lifts([12, 12, 12])(t) }), flow }),
    ).result.reps.map((r) => r.uncertaintyDeg);
  const [byFlow, byLandmarks] = [of(true), of(false)];
  expect(byFlow).toHaveLength(3);
  byFlow.forEach((u, i) => {
    expect(u).toBeGreaterThan(deg(0.9));
    expect(byLandmarks[i]).toBeGreaterThan(2 * u);
  });
});
