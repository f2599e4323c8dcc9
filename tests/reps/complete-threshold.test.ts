import fc from 'fast-check';
import { expect, test } from 'vitest';
import { completeThreshold, usualRange } from '../../src/reps/complete-threshold.ts';
import { RULE } from './movement-builder.ts';

test('the usual range is that of the full movements, not of the half-hearted ones', () => {
  expect(usualRange([12, 4, 11, 3.5, 13, 4.2, 12])).toBe(12);
  expect(usualRange([])).toBeNull();
});

test('without partial movements the border lies well below all of them', () => {
  const border = completeThreshold([14, 15, 12, 16, 11], RULE);
  expect(border).toBeGreaterThan(4);
  expect(border).toBeLessThan(10);
});

test('movements of just under a half of the usual range that form a group of their own are partial', () => {
  const border = completeThreshold([10, 10.5, 5.2, 9.8, 4.6, 10.2], RULE);
  expect(border).toBeGreaterThan(5.2);
  expect(border).toBeLessThan(9.8);
});

test('the border never falls below the least of the exercise', () => {
  expect(completeThreshold([4, 4.1, 4.2], RULE)).toBe(3);
  expect(completeThreshold([], RULE)).toBe(3);
});

test('the border moves with the person: twice the ranges, twice the border', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: 10, max: 60, noNaN: true }), { minLength: 1, maxLength: 30 }), (ranges) => {
      const double = completeThreshold(
        ranges.map((r) => 2 * r),
        RULE,
      );
      expect(double).toBeCloseTo(2 * completeThreshold(ranges, RULE), 8);
    }),
  );
});

test('the order of the movements does not matter', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: 1, max: 60, noNaN: true }), { minLength: 2, maxLength: 20 }), (ranges) => {
      expect(completeThreshold([...ranges].reverse(), RULE)).toBe(completeThreshold(ranges, RULE));
    }),
  );
});
