import { expect, test } from 'vitest';
import { trialsOf } from '../../src/compare/trials.ts';
import { deg } from '../../src/units.ts';

test('mean and sample standard deviation, as any handbook has them', () => {
  // 2, 4, 4, 4, 5, 5, 7, 9: mean 5, sum of squares 32, sample standard deviation sqrt(32 / 7). A common textbook example, from memory.
  const values = [2, 4, 4, 4, 5, 5, 7, 9].map(deg);
  const trials = trialsOf(values);
  expect(trials).toMatchObject({ count: 8, meanDeg: 5 });
  expect(trials?.spreadDeg).toBeCloseTo(Math.sqrt(32 / 7), 12);
});

test('one has no spread, none is nothing', () => {
  expect(trialsOf([deg(7)])).toEqual({ count: 1, meanDeg: 7, spreadDeg: null });
  expect(trialsOf([])).toBeNull();
});
