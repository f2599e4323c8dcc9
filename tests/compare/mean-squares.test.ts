import { expect, test } from 'vitest';
import { meanSquares } from '../../src/compare/mean-squares.ts';
import { SHROUT_FLEISS } from './shrout-fleiss.ts';

test('the mean squares are those of the published example', () => {
  const squares = meanSquares(SHROUT_FLEISS);
  if (!squares.ok) throw new Error(squares.error.kind);
  // Shrout and Fleiss 1979, table 3: 11.24, 32.49, 1.02.
  expect(squares.value.between).toBeCloseTo(11.24, 2);
  expect(squares.value.betweenRaters).toBeCloseTo(32.49, 2);
  expect(squares.value.residual).toBeCloseTo(1.02, 2);
});

test.each([
  [[], { kind: 'too-few-subjects', found: 0, needed: 2 }],
  [[[1, 2]], { kind: 'too-few-subjects', found: 1, needed: 2 }],
  [[[1], [2]], { kind: 'too-few-raters', found: 1, needed: 2 }],
  [
    [
      [1, 2],
      [3, 4, 5],
    ],
    { kind: 'incomplete-subject', subject: 1 },
  ],
  [
    [
      [1, Number.NaN],
      [3, 4],
    ],
    { kind: 'incomplete-subject', subject: 0 },
  ],
])('%j is refused', (ratings, error) => {
  expect(meanSquares(ratings)).toEqual({ ok: false, error });
});
