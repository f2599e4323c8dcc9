import { expect, test } from 'vitest';
import { mayShow, personHull } from '../../src/flow/person-hull.ts';

const square = [
  { x: 100, y: 100 },
  { x: 200, y: 200 },
  { x: 150, y: 140 },
  { x: 200, y: 100 },
  { x: 100, y: 200 },
];

test('a person shows inside the hull of their points and a body width beyond', () => {
  const hull = personHull(square);
  expect(hull.corners).toHaveLength(4);
  expect(hull.marginPx).toBeCloseTo(0.12 * Math.hypot(100, 100), 6);
  expect(mayShow(hull, 150, 150)).toBe(true);
  expect(mayShow(hull, 100 - hull.marginPx + 0.1, 150)).toBe(true);
  expect(mayShow(hull, 100 - hull.marginPx - 0.1, 150)).toBe(false);
  expect(mayShow(hull, 400, 150)).toBe(false);
});

test('points in a line have a hull too: what lies near the line', () => {
  const hull = personHull([0, 50, 100].map((x) => ({ x, y: 10 })));
  expect(mayShow(hull, 50, 10 + hull.marginPx - 0.1)).toBe(true);
  expect(mayShow(hull, 50, 10 + hull.marginPx + 0.1)).toBe(false);
});
