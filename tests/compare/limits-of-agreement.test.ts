import fc from 'fast-check';
import { expect, test } from 'vitest';
import { limitsOfAgreement } from '../../src/compare/limits-of-agreement.ts';

// Bland and Altman 1986, Lancet 1:307, table 1: peak flow of 17 people, first reading by the large and by the mini Wright meter, l/min.
const LARGE = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];
const MINI = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451];

function agreement(differences: readonly number[]) {
  const found = limitsOfAgreement(differences);
  if (!found.ok) throw new Error(found.error.kind);
  return found.value;
}

test('bias and limits are those of the published example', () => {
  const { bias, deviation, limits } = agreement(LARGE.map((large, i) => large - (MINI[i] as number)));
  expect(bias).toBeCloseTo(-2.1, 1);
  expect(deviation).toBeCloseTo(38.8, 1);
  // The paper takes two standard deviations (-79.7 to 75.5); with 1.96 of them they are:
  expect(limits[0]).toBeCloseTo(-78.1, 1);
  expect(limits[1]).toBeCloseTo(73.9, 1);
});

test('the confidence intervals are those of the published example', () => {
  const { biasInterval, lowerInterval, upperInterval } = agreement(LARGE.map((large, i) => large - (MINI[i] as number)));
  // The paper's, from memory: -22.0 to 17.8 for the bias.
  expect(biasInterval[0]).toBeCloseTo(-22.0, 0);
  expect(biasInterval[1]).toBeCloseTo(17.8, 0);
  // From memory, about limits of two standard deviations: -114.3 to -45.1 and 40.9 to 110.1. Limits of 1.96 lie 0.04 x 38.8 nearer to the bias.
  const nearer = 0.04 * 38.8;
  expect(Math.abs(lowerInterval[0] - (-114.3 + nearer))).toBeLessThan(0.5);
  expect(Math.abs(lowerInterval[1] - (-45.1 + nearer))).toBeLessThan(0.5);
  expect(Math.abs(upperInterval[0] - (40.9 - nearer))).toBeLessThan(0.5);
  expect(Math.abs(upperInterval[1] - (110.1 - nearer))).toBeLessThan(0.5);
});

const differences = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 2, maxLength: 30 });

test('exchanging the two ways of measuring mirrors bias and limits', () => {
  fc.assert(
    fc.property(differences, (all) => {
      const one = agreement(all);
      const other = agreement(all.map((d) => -d));
      expect(other.bias).toBeCloseTo(-one.bias, 8);
      expect(other.limits[0]).toBeCloseTo(-one.limits[1], 8);
      expect(other.lowerInterval[0]).toBeCloseTo(-one.upperInterval[1], 6);
    }),
  );
});

test('a constant moves bias and limits by itself and leaves their width alone', () => {
  fc.assert(
    fc.property(differences, fc.integer({ min: -500, max: 500 }), (all, more) => {
      const one = agreement(all);
      const other = agreement(all.map((d) => d + more));
      expect(other.bias - one.bias).toBeCloseTo(more, 8);
      expect(other.limits[0] - one.limits[0]).toBeCloseTo(more, 8);
      expect(other.limits[1] - one.limits[1]).toBeCloseTo(more, 8);
    }),
  );
});

test.each([[[]], [[3]]])('%j are too few differences', (few: readonly number[]) => {
  expect(limitsOfAgreement(few)).toEqual({ ok: false, error: { kind: 'too-few-differences', found: few.length, needed: 2 } });
});
