import { expect, test } from 'vitest';
import { factorise, solveFactored } from '../../src/flow/symmetric-solve.ts';

test('a positive definite system is solved from its lower triangle', () => {
  const matrix = Float64Array.from([4, 0, 0, 2, 5, 0, 1, 3, 6]);
  const vector = Float64Array.from([4 + 4 + 3, 2 + 10 + 9, 1 + 6 + 18]);
  expect(factorise(matrix, 3)).toBe(true);
  solveFactored(matrix, 3, vector);
  [1, 2, 3].forEach((v, i) => {
    expect(vector[i]).toBeCloseTo(v, 10);
  });
});

test('singular, negative and NaN matrices are refused', () => {
  expect(factorise(Float64Array.from([1, 0, 1, 1]), 2)).toBe(false);
  expect(factorise(Float64Array.from([1, 0, 0, -1]), 2)).toBe(false);
  expect(factorise(Float64Array.from([Number.NaN]), 1)).toBe(false);
  expect(factorise(new Float64Array(4), 2)).toBe(false);
});
