import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type IccForm, intraclassCorrelation } from '../../src/compare/intraclass-correlation.ts';
import { meanSquares } from '../../src/compare/mean-squares.ts';
import { SHROUT_FLEISS } from './shrout-fleiss.ts';

const FORMS: readonly IccForm[] = ['2,1', '3,1'];

function icc(ratings: readonly (readonly number[])[], form: IccForm): number {
  const squares = meanSquares(ratings);
  if (!squares.ok) throw new Error(squares.error.kind);
  const value = intraclassCorrelation(squares.value, form);
  if (!value.ok) throw new Error(value.error.kind);
  return value.value;
}

/** Tables whose subjects and ratings vary, so that no form divides by next to nothing. */
const table = fc
  .tuple(fc.integer({ min: 3, max: 8 }), fc.integer({ min: 2, max: 5 }))
  .chain(([n, k]) =>
    fc.array(fc.array(fc.integer({ min: -50, max: 50 }), { minLength: k, maxLength: k }), { minLength: n, maxLength: n }),
  )
  .map((rows) => rows.map((row, i) => row.map((x, j) => x + 300 * i + 7 * ((i * j) % 3))));

// Shrout and Fleiss 1979, Psychol Bull 86:420-428, table 4.
test.each([
  ['2,1', 0.29],
  ['3,1', 0.71],
] as const)('ICC(%s) of the published example is %d', (form, published) => {
  expect(icc(SHROUT_FLEISS, form)).toBeCloseTo(published, 2);
});

test('a rater who always reads more leaves consistency alone, and costs agreement', () => {
  fc.assert(
    fc.property(table, fc.integer({ min: 200, max: 900 }), (ratings, more) => {
      const shifted = ratings.map((row) => row.map((x, j) => (j === 0 ? x + more : x)));
      expect(icc(shifted, '3,1')).toBeCloseTo(icc(ratings, '3,1'), 8);
      expect(icc(shifted, '2,1')).toBeLessThan(icc(ratings, '2,1'));
    }),
  );
});

test('a constant for all, another unit, and another order of the subjects change no form', () => {
  fc.assert(
    fc.property(table, fc.integer({ min: -500, max: 500 }), fc.integer({ min: 2, max: 9 }), (ratings, more, times) => {
      const other = ratings.map((row) => row.map((x) => times * (x + more))).reverse();
      for (const form of FORMS) expect(icc(other, form)).toBeCloseTo(icc(ratings, form), 8);
    }),
  );
});

test('no form exceeds 1', () => {
  fc.assert(
    fc.property(table, (ratings) => {
      for (const form of FORMS) expect(icc(ratings, form)).toBeLessThanOrEqual(1);
    }),
  );
});

test('raters who agree wholly give 1 in every form', () => {
  for (const form of FORMS)
    expect(
      icc(
        [
          [1, 1],
          [5, 5],
          [9, 9],
        ],
        form,
      ),
    ).toBeCloseTo(1, 12);
});

test('ratings that are all alike have no correlation', () => {
  const squares = meanSquares([
    [4, 4],
    [4, 4],
  ]);
  if (!squares.ok) throw new Error(squares.error.kind);
  for (const form of FORMS)
    expect(intraclassCorrelation(squares.value, form)).toEqual({ ok: false, error: { kind: 'no-variance' } });
});
