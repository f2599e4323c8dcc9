import { expect, test } from 'vitest';
import { minimalDetectableChange } from '../../src/compare/minimal-detectable-change.ts';
import { standardError } from '../../src/compare/standard-error.ts';

// Konor et al. 2012, Int J Sports Phys Ther 7:279-287: the SEM and MDC95 of ankle dorsiflexion, both printed to a tenth.
test.each([
  ['inclinometer, least', 1.3, 3.7],
  ['inclinometer, most', 1.4, 3.8],
  ['goniometer, least', 1.8, 5.0],
  ['goniometer, most', 2.8, 7.7],
])('%s: the SEM of %d gives the printed MDC95 of %d, to rounding', (_, sem, printed) => {
  // The SEM is rounded to -+ 0.05, the MDC as well: 2.772 * 0.05 + 0.05.
  expect(Math.abs(minimalDetectableChange(sem) - printed)).toBeLessThan(0.19);
});

test('the minimal detectable change is 2.772 standard errors', () => {
  expect(minimalDetectableChange(1)).toBeCloseTo(2.7719, 4);
});

test('the standard error is the deviation without what the reliability explains', () => {
  expect(standardError(10, 0.91)).toMatchObject({ ok: true, value: expect.closeTo(3, 10) });
  expect(standardError(10, 1)).toEqual({ ok: true, value: 0 });
  expect(standardError(10, 0)).toEqual({ ok: true, value: 10 });
});

test.each([-0.1, 1.01, Number.NaN])('a reliability of %d is refused', (found) => {
  expect(standardError(10, found)).toEqual({ ok: false, error: { kind: 'reliability-out-of-range', found } });
});

test('a deviation below zero is a mistake of the caller', () => {
  expect(() => standardError(-1, 0.5)).toThrow('standard deviation');
});
