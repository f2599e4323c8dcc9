import { expect, test } from 'vitest';
import { aboutPivot, movedPoint } from '../../src/flow/plane-motion.ts';
import { inverseOf, motionOf } from './synthetic-picture.ts';

test('a positive rotation takes a point to the right of the pivot below it: clockwise on the screen', () => {
  const [x, y] = movedPoint(motionOf(90, 0, 0, 10, 20), 15, 20);
  expect(x).toBeCloseTo(10, 10);
  expect(y).toBeCloseTo(25, 10);
});

test('the same motion about another pivot moves every point alike', () => {
  const motion = motionOf(33, 4, -7, 50, 60, 1.2);
  const other = aboutPivot(motion, -20, 5);
  const [x, y] = movedPoint(motion, 81, 12);
  const [u, v] = movedPoint(other, 81, 12);
  expect(u).toBeCloseTo(x, 8);
  expect(v).toBeCloseTo(y, 8);
  expect(other.pivotX).toBe(-20);
});

test('a motion and its inverse leave a point where it was', () => {
  const motion = motionOf(-12, 3, 8, 40, 30, 0.9);
  const [x, y] = movedPoint(inverseOf(motion), ...movedPoint(motion, 71, 9));
  expect(x).toBeCloseTo(71, 8);
  expect(y).toBeCloseTo(9, 8);
});
