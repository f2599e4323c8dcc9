import { expect, test } from 'vitest';
import { agreementOf } from '../../../scripts/accuracy/agreement.ts';

test('bias and limits are those of the agreement', () => {
  // Standard deviation of -3, 1, 2: sqrt(7).
  expect(agreementOf([-3, 1, 2])?.limits).toEqual([
    expect.closeTo(-1.96 * Math.sqrt(7), 10),
    expect.closeTo(1.96 * Math.sqrt(7), 10),
  ]);
});

test('mean absolute error and the worst leave out the sign', () => {
  expect(agreementOf([-3, 1, 2])).toMatchObject({ n: 3, meanAbsolute: 2, bias: 0, worst: 3 });
});

test('one error has no limits, and none has no agreement', () => {
  expect(agreementOf([1])?.limits).toBeNull();
  expect(agreementOf([])).toBeNull();
});
