import { expect, test } from 'vitest';
import { gradientsOf, reflected, SCHARR, SOBEL } from '../../src/flow/gradients.ts';
import type { FloatImage } from '../../src/flow/grey.ts';
import { buildPyramid } from '../../src/flow/pyramid.ts';
import { render, texture } from './synthetic-picture.ts';

const plane: FloatImage = {
  width: 9,
  height: 7,
  data: Float32Array.from({ length: 63 }, (_, i) => 3 * (i % 9) - 2 * Math.floor(i / 9)),
};

test('slopes are in grey levels per pixel, whichever kernel, and 0 across an edge', () => {
  for (const kernel of [SCHARR, SOBEL]) {
    const { x, y } = gradientsOf(plane, kernel);
    expect(x[3 * 9 + 4]).toBeCloseTo(3, 5);
    expect(y[3 * 9 + 4]).toBeCloseTo(-2, 5);
    expect(x[3 * 9]).toBeCloseTo(0, 5);
    expect(y[4]).toBeCloseTo(0, 5);
  }
});

test('indices beyond an edge are reflected about the edge pixel', () => {
  expect([-2, -1, 0, 4, 5, 6].map((i) => reflected(i, 5))).toEqual([2, 1, 0, 4, 3, 2]);
  expect(reflected(-3, 1)).toBe(0);
});

test('level 0 is the picture and pixel i of level n lies on pixel i * 2^n', () => {
  const picture = render((x, y) => 20 + 2 * x + y, 65, 49);
  const { levels } = buildPyramid(picture, 3);
  expect(Array.from(levels[0]?.image.data ?? [])).toEqual(Array.from(picture.data));
  const coarse = levels[2]?.image;
  expect([coarse?.width, coarse?.height]).toEqual([17, 13]);
  // A plane passes through a symmetric kernel unchanged, away from the edges.
  expect(coarse?.data[5 * 17 + 6]).toBeCloseTo(20 + 2 * 24 + 20, 4);
});

test('halving keeps the mean and takes out what is too fine', () => {
  const chequers = render((x, y) => (((x + y) & 1) === 0 ? 100 : 140), 32, 32);
  const coarse = buildPyramid(chequers, 2).levels[1]?.image.data ?? new Float32Array();
  expect(coarse.every((v) => Math.abs(v - 120) < 1e-4)).toBe(true);
});

test('levels under 8 px on a side are not made', () => {
  expect(buildPyramid(render(texture(1), 40, 20), 6).levels.map((l) => l.image.height)).toEqual([20, 10]);
});
