import fc from 'fast-check';
import { expect, test } from 'vitest';
import { movedPoint } from '../../src/flow/plane-motion.ts';
import { uniformFrom } from '../../src/flow/prng.ts';
import { fitRobustSimilarity } from '../../src/flow/robust-similarity.ts';
import { fitSimilarity } from '../../src/flow/similarity.ts';
import { px } from '../../src/units.ts';
import { gaussianFrom, motionOf } from './synthetic-picture.ts';

const scattered = (count: number, seed: number): Float32Array => {
  const random = uniformFrom(seed);
  return Float32Array.from({ length: 2 * count }, () => 100 + 60 * random());
};
const moved = (points: Float32Array, motion: ReturnType<typeof motionOf>, noise = 0, seed = 9): Float32Array => {
  const gaussian = gaussianFrom(seed);
  const out = new Float32Array(points.length);
  for (let i = 0; i < points.length; i += 2) {
    const [x, y] = movedPoint(motion, points[i] ?? 0, points[i + 1] ?? 0);
    out[i] = x + noise * gaussian();
    out[i + 1] = y + noise * gaussian();
  }
  return out;
};
const value = <T>(result: { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: unknown }): T => {
  if (!result.ok) throw new Error(`expected a fit, got ${JSON.stringify(result.error)}`);
  return result.value;
};

test('any turn, shift and scale of exact points is recovered', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -179, max: 179, noNaN: true }),
      fc.double({ min: -40, max: 40, noNaN: true }),
      fc.double({ min: 0.5, max: 2, noNaN: true }),
      fc.integer({ min: 1, max: 1000 }),
      (rotation, shift, scale, seed) => {
        const points = scattered(8, seed);
        const fit = value(
          fitSimilarity(points, moved(points, motionOf(rotation, shift, -shift, 130, 130, scale)), { allowScale: true }),
        );
        expect(fit.motion.rotationDeg).toBeCloseTo(rotation, 3);
        expect(fit.motion.scale).toBeCloseTo(scale, 5);
        const [x, y] = movedPoint(fit.motion, 130, 130);
        expect(x).toBeCloseTo(130 + shift, 3);
        expect(y).toBeCloseTo(130 - shift, 3);
        expect(fit.rmsPx).toBeLessThan(1e-3);
      },
    ),
  );
});

test('a point of weight 0 is ignored even when it is NaN', () => {
  const points = scattered(6, 2);
  const to = moved(points, motionOf(5, 1, 2, 130, 130));
  to[3] = Number.NaN;
  const fit = value(fitSimilarity(points, to, { weights: [1, 0, 1, 1, 1, 1] }));
  expect(fit.motion.rotationDeg).toBeCloseTo(5, 4);
});

test('the standard error of the rotation is the spread it has over repetitions', () => {
  const points = scattered(20, 4);
  const fits = Array.from({ length: 400 }, (_, k) =>
    value(fitSimilarity(points, moved(points, motionOf(7, 3, 1, 130, 130), 0.4, k + 1))),
  );
  const spread = Math.sqrt(fits.reduce((s, f) => s + (f.motion.rotationDeg - 7) ** 2, 0) / fits.length);
  const stated = Math.sqrt(fits.reduce((s, f) => s + f.rotationSeDeg ** 2, 0) / fits.length);
  // 400 repetitions know a spread within 3.5 % (one standard error); three of them.
  expect(Math.abs(stated / spread - 1)).toBeLessThan(0.11);
});

test('two points fix a motion but not its error; one point and a heap of points are refused', () => {
  const two = Float32Array.from([0, 0, 10, 0]);
  expect(value(fitSimilarity(two, Float32Array.from([0, 0, 0, 10]), { allowScale: true })).rotationSeDeg).toBe(
    Number.POSITIVE_INFINITY,
  );
  expect(fitSimilarity(two.subarray(0, 2), two.subarray(0, 2))).toEqual({
    ok: false,
    error: { kind: 'too-few-points', count: 1, needed: 2 },
  });
  const heap = new Float32Array(20).fill(50);
  expect(fitSimilarity(heap, scattered(10, 1))).toMatchObject({ ok: false, error: { kind: 'degenerate', spreadPx: 0 } });
  expect(fitSimilarity(scattered(10, 1), new Float32Array(20).fill(Number.NaN)).ok).toBe(false);
});

test('forty per cent strays do not turn the robust fit, and are marked', () => {
  const points = scattered(50, 6);
  const to = moved(points, motionOf(-11, 5, 2, 130, 130), 0.1);
  const random = uniformFrom(77);
  for (let i = 0; i < 20; i++) {
    to[2 * i] = 60 + 140 * random();
    to[2 * i + 1] = 60 + 140 * random();
  }
  const fit = value(fitRobustSimilarity(points, to, { seed: 3, inlierPx: px(0.6) }));
  expect(Math.abs(fit.motion.rotationDeg + 11)).toBeLessThan(0.1);
  expect(Array.from(fit.inliers.subarray(20)).every((v) => v === 1)).toBe(true);
  expect(fit.inlierCount).toBe(fit.inliers.reduce((a, b) => a + b, 0));
  expect(fit.inlierCount).toBeLessThanOrEqual(32);
  expect(fitRobustSimilarity(points, to, { seed: 3, inlierPx: px(0.6) })).toEqual({ ok: true, value: fit });
});

test('points that move each their own way agree on nothing, and say so', () => {
  expect(fitRobustSimilarity(scattered(30, 1), scattered(30, 2), { minInliers: 12 })).toMatchObject({
    ok: false,
    error: { kind: 'no-agreement', needed: 12 },
  });
  expect(fitRobustSimilarity(scattered(10, 1), scattered(10, 1), {}, new Uint8Array(10))).toMatchObject({
    ok: false,
    error: { kind: 'too-few-points', count: 0 },
  });
});
