import fc from 'fast-check';
import { expect, test } from 'vitest';
import { findCorners } from '../../src/flow/corners.ts';
import { cropOf, type Grey } from '../../src/flow/grey.ts';
import { FLAT, OUTSIDE, TRACKED, trackBothWays, trackPoints } from '../../src/flow/lucas-kanade.ts';
import { movedPoint, type PlaneMotion } from '../../src/flow/plane-motion.ts';
import { buildPyramid } from '../../src/flow/pyramid.ts';
import { fitRobustSimilarity } from '../../src/flow/robust-similarity.ts';
import { csvRows } from './csv-rows.ts';
import { pgmPicture } from './pgm-picture.ts';
import { mirrored, motionOf, type Rendering, render, type Surface, texture } from './synthetic-picture.ts';

const WIDTH = 161;
const HEIGHT = 129;
const pyramid = (picture: Grey) => buildPyramid(picture, 3);
const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
/** Corners far enough from the edges that their windows stay inside. */
const innerCorners = (picture: Grey): Float32Array => {
  const mask = Uint8Array.from(picture.data, (_, i) => {
    const x = i % picture.width;
    const y = Math.floor(i / picture.width);
    return x > 24 && y > 24 && x < picture.width - 24 && y < picture.height - 24 ? 1 : 0;
  });
  return findCorners(buildPyramid(picture, 1), { mask }).points;
};
const errorsOf = (points: Float32Array, positions: Float32Array, motion: PlaneMotion): number[] =>
  Array.from({ length: points.length / 2 }, (_, i) => {
    const [x, y] = movedPoint(motion, points[2 * i] ?? 0, points[2 * i + 1] ?? 0);
    return Math.hypot((positions[2 * i] ?? 0) - x, (positions[2 * i + 1] ?? 0) - y);
  });

test.each(['seated-foot-rest', 'lying-leg-first', 'lying-leg-later'])(
  'from %s on, points go where calcOpticalFlowPyrLK takes them',
  (from) => {
    const rows = csvRows('opencv-lucas-kanade.csv').filter((r) => r.from === from);
    expect(rows).toHaveLength(60);
    const points = Float32Array.from(rows.flatMap((r) => [Number(r.x), Number(r.y)]));
    const options = { windowPx: 15, levels: 3, iterations: 20, epsilonPx: 0.01, minEigenvalue: 0.1024, matchLight: false };
    const found = trackPoints(pyramid(pgmPicture(from)), pyramid(pgmPicture(rows[0]?.to ?? '')), points, options);
    const distances = rows.map((r, i) =>
      Math.hypot((found.positions[2 * i] ?? 0) - Number(r.toX), (found.positions[2 * i + 1] ?? 0) - Number(r.toY)),
    );
    expect(median(distances)).toBeLessThan(0.05);
    // Points that both follow well agree one by one, not only in the middle.
    const wellFollowed = distances.filter((_, i) => Number(rows[i]?.error) < 4 && found.status[i] === TRACKED);
    expect(wellFollowed.length).toBeGreaterThan(20);
    expect(wellFollowed.filter((d) => d < 0.05).length / wellFollowed.length).toBeGreaterThan(0.9);
  },
);

test.each<[string, Rendering, number]>([
  ['a clean picture', {}, 0.05],
  ['gain 0.7 and bias 20', { gain: 0.7, bias: 20 }, 0.05],
  ['noise of 3 grey levels', { noise: 3 }, 0.1],
])('a sub-pixel shift is recovered: %s', (_, rendering, most) => {
  const rest = render(texture(11), WIDTH, HEIGHT);
  const points = innerCorners(rest);
  for (const [dx, dy] of [
    [0.37, -0.62],
    [3.4, 2.8],
    [-8.25, 6.1],
  ] as const) {
    const motion = motionOf(0, dx, dy, 0, 0);
    const { positions, status } = trackPoints(
      pyramid(rest),
      pyramid(render(texture(11), WIDTH, HEIGHT, { motion, ...rendering })),
      points,
    );
    expect(status.every((s) => s === TRACKED)).toBe(true);
    expect(median(errorsOf(points, positions, motion))).toBeLessThan(most);
  }
});

test.each<[string, Rendering]>([
  ['a clean picture', {}],
  ['gain 0.7 and bias 20', { gain: 0.7, bias: 20 }],
  ['noise of 2 grey levels', { noise: 2 }],
])('followed points give the turn between two frames: %s', (_, rendering) => {
  const rest = render(texture(12), WIDTH, HEIGHT);
  const points = innerCorners(rest);
  for (const rotation of [-3, 1.3, 3]) {
    const motion = motionOf(rotation, 2.2, -1.4, 80, 64);
    const picture = render(texture(12), WIDTH, HEIGHT, { motion, ...rendering });
    const { positions, closurePx } = trackBothWays(pyramid(rest), pyramid(picture), points);
    const weights = Array.from(closurePx, (c) => (c < 0.5 ? 1 : 0));
    const fit = fitRobustSimilarity(points, positions, { seed: 1 }, weights);
    expect(fit.ok && Math.abs(fit.value.motion.rotationDeg - rotation)).toBeLessThan(0.1);
  }
});

test('points on a strange background that stays put are told from the part that turns', () => {
  const strange = texture(99);
  const covered =
    (part: Surface): Surface =>
    (x, y) =>
      x < 64 ? strange(x, y) : part(x, y);
  const motion = motionOf(3, 4, -3, 80, 64);
  const part = texture(13);
  const rest = render(covered(part), WIDTH, HEIGHT);
  const turned = render(part, WIDTH, HEIGHT, { motion });
  const picture = { ...turned, data: turned.data.map((v, i) => (i % WIDTH < 64 ? (rest.data[i] ?? 0) : v)) };
  const points = innerCorners(rest);
  const strangers = Array.from({ length: points.length / 2 }, (_, i) => (points[2 * i] ?? 0) < 64);
  expect(strangers.filter(Boolean).length / strangers.length).toBeGreaterThan(0.2);
  const { positions, closurePx } = trackBothWays(pyramid(rest), pyramid(picture), points);
  const fit = fitRobustSimilarity(
    points,
    positions,
    { seed: 5 },
    Array.from(closurePx, (c) => (c < 0.5 ? 1 : 0)),
  );
  expect(fit.ok && Math.abs(fit.value.motion.rotationDeg - 3)).toBeLessThan(0.1);
  expect(fit.ok && strangers.every((s, i) => !s || fit.value.inliers[i] === 0)).toBe(true);
});

test('a picture followed to itself does not move, and closes', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 10_000 }), (seed) => {
      const picture = pyramid(render(texture(seed), 81, 81));
      const points = findCorners(picture, { maxCount: 15 }).points;
      const found = trackBothWays(picture, picture, points);
      expect(found.status.every((s) => s === TRACKED)).toBe(true);
      expect(Math.max(...found.positions.map((v, i) => Math.abs(v - (points[i] ?? 0))))).toBeLessThan(1e-3);
      expect(Math.max(...found.closurePx)).toBeLessThan(2e-3);
      expect(Math.max(...found.residual)).toBeLessThan(1e-2);
    }),
    { numRuns: 10 },
  );
});

test('mirrored pictures move the mirrored way', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 10_000 }),
      fc.double({ min: -3, max: 3, noNaN: true }),
      fc.double({ min: -3, max: 3, noNaN: true }),
      (seed, dx, dy) => {
        // 81 = 4 * 20 + 1: every level of the mirrored pyramid is the mirrored level.
        const from = render(texture(seed), 81, 81);
        const to = render(texture(seed), 81, 81, { motion: motionOf(0, dx, dy, 0, 0) });
        const points = Float32Array.from([40, 40, 32, 44, 50, 33]);
        const flipped = points.map((v, i) => (i % 2 === 0 ? 80 - v : v));
        const plain = trackPoints(pyramid(from), pyramid(to), points);
        const mirror = trackPoints(pyramid(mirrored(from)), pyramid(mirrored(to)), flipped);
        expect(Array.from(mirror.status)).toEqual(Array.from(plain.status));
        mirror.positions.forEach((v, i) => {
          expect(i % 2 === 0 ? 80 - v : v).toBeCloseTo(plain.positions[i] ?? Number.NaN, 2);
        });
      },
    ),
    { numRuns: 20 },
  );
});

test('crops of two frames with different origins give frame pixels', () => {
  const motion = motionOf(0, 5.3, -2.6, 0, 0);
  const from = cropOf(render(texture(21), WIDTH, HEIGHT), { x: 30, y: 20, width: 90, height: 90 });
  const to = cropOf(render(texture(21), WIDTH, HEIGHT, { motion }), { x: 37, y: 25, width: 90, height: 90 });
  if (!from || !to) throw new Error('the crops lie in the frame');
  const points = Float32Array.from([75, 65, 80, 70]);
  const { positions } = trackPoints(pyramid(from), pyramid(to), points);
  expect(Math.max(...errorsOf(points, positions, motion))).toBeLessThan(0.05);
});

test('a guess reaches a shift the search alone does not', () => {
  const motion = motionOf(0, 41.3, -20.2, 0, 0);
  const from = pyramid(render(texture(22), WIDTH, HEIGHT));
  const to = pyramid(render(texture(22), WIDTH, HEIGHT, { motion }));
  const points = Float32Array.from([70, 80, 60, 75]);
  const guesses = points.map((v, i) => v + (i % 2 === 0 ? 39 : -19));
  const guided = trackBothWays(from, to, points, {}, guesses);
  expect(Math.max(...errorsOf(points, guided.positions, motion))).toBeLessThan(0.1);
  expect(Math.max(...guided.closurePx)).toBeLessThan(0.1);
  expect(Math.min(...errorsOf(points, trackPoints(from, to, points).positions, motion))).toBeGreaterThan(5);
});

test('blank and far-off points are refused without a NaN', () => {
  const blank = pyramid(render(() => 128, 80, 80));
  const edge = pyramid(render((x) => (x < 40 ? 60 : 180), 80, 80));
  const points = Float32Array.from([40, 40, -30, 10, 500, 500]);
  for (const picture of [blank, edge]) {
    const found = trackBothWays(picture, picture, points);
    expect(Array.from(found.status)).toEqual([FLAT, OUTSIDE, OUTSIDE]);
    expect(found.positions.some(Number.isNaN)).toBe(false);
    expect(Array.from(found.closurePx)).toEqual([Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]);
  }
  const gone = trackPoints(pyramid(render(texture(23), 80, 80)), blank, points.subarray(0, 2));
  expect(gone.positions.some(Number.isNaN)).toBe(false);
  expect(gone.residual[0]).toBeGreaterThan(5);
});
