import { expect, test } from 'vitest';
import { findCorners } from '../../src/flow/corners.ts';
import { buildPyramid } from '../../src/flow/pyramid.ts';
import { csvRows } from './csv-rows.ts';
import { pgmPicture } from './pgm-picture.ts';
import { render, texture } from './synthetic-picture.ts';

test('the corners and their order are those of goodFeaturesToTrack', () => {
  const rows = csvRows('opencv-corners.csv');
  const names = [...new Set(rows.map((r) => r.picture ?? ''))];
  expect(names).toHaveLength(2);
  for (const name of names) {
    const expected = rows.filter((r) => r.picture === name).map((r) => [Number(r.x), Number(r.y)]);
    const { points } = findCorners(buildPyramid(pgmPicture(name), 1));
    const found = Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i], points[2 * i + 1]]);
    expect(found).toEqual(expected);
  }
});

test('a square has its four corners and its edges none', () => {
  const square = render((x, y) => (x >= 20 && x < 40 && y >= 15 && y < 35 ? 200 : 50), 64, 56);
  const { points } = findCorners(buildPyramid(square, 1), { quality: 0.5 });
  const near = (x: number, y: number) =>
    Array.from({ length: points.length / 2 }, (_, i) => Math.hypot((points[2 * i] ?? 0) - x, (points[2 * i + 1] ?? 0) - y)).some(
      (d) => d < 2,
    );
  expect(points.length).toBe(8);
  expect([near(19.5, 14.5), near(39.5, 14.5), near(19.5, 34.5), near(39.5, 34.5)]).toEqual([true, true, true, true]);
});

test('corners keep to the mask, their distance and their number, strongest first, in frame pixels', () => {
  const picture = render(texture(8), 120, 90);
  const mask = Uint8Array.from(picture.data, (_, i) => (i % 120 < 60 ? 1 : 0));
  const { points, strength } = findCorners(buildPyramid({ ...picture, originX: 300, originY: 200 }, 1), {
    mask,
    minDistancePx: 7,
    maxCount: 20,
  });
  const count = strength.length;
  expect(count).toBe(20);
  for (let i = 0; i < count; i++) {
    expect(points[2 * i]).toBeLessThan(360);
    expect(points[2 * i]).toBeGreaterThanOrEqual(300);
    expect(points[2 * i + 1]).toBeGreaterThanOrEqual(200);
    if (i > 0) expect(strength[i]).toBeLessThanOrEqual(strength[i - 1] ?? 0);
    for (let j = 0; j < i; j++) {
      const d = Math.hypot((points[2 * i] ?? 0) - (points[2 * j] ?? 0), (points[2 * i + 1] ?? 0) - (points[2 * j + 1] ?? 0));
      expect(d).toBeGreaterThanOrEqual(7);
    }
  }
});

test('a uniform picture and an empty mask have no corners', () => {
  expect(
    findCorners(
      buildPyramid(
        render(() => 90, 50, 50),
        1,
      ),
    ).points,
  ).toHaveLength(0);
  const picture = render(texture(8), 50, 50);
  expect(findCorners(buildPyramid(picture, 1), { mask: new Uint8Array(2500) }).points).toHaveLength(0);
});
