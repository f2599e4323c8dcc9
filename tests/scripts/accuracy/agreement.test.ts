import { expect, test } from 'vitest';
import { agreementOf } from '../../../scripts/accuracy/agreement.ts';

// Bland and Altman 1986, Lancet 1:307, table 1: peak flow of 17 people, first reading by the large and by the mini Wright meter, l/min.
const LARGE = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];
const MINI = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451];

test('bias and limits are those of the published example', () => {
  const agreement = agreementOf(LARGE.map((large, i) => large - (MINI[i] as number)));
  expect(agreement?.bias).toBeCloseTo(-2.1, 1);
  // The paper takes two standard deviations of 38.8; here it is 1.96 of them.
  expect(agreement?.limits?.[0]).toBeCloseTo(-2.1 - 1.96 * 38.8, 0);
  expect(agreement?.limits?.[1]).toBeCloseTo(-2.1 + 1.96 * 38.8, 0);
});

test('mean absolute error and the worst leave out the sign', () => {
  expect(agreementOf([-3, 1, 2])).toMatchObject({ n: 3, meanAbsolute: 2, bias: 0, worst: 3 });
});

test('one error has no limits, and none has no agreement', () => {
  expect(agreementOf([1])?.limits).toBeNull();
  expect(agreementOf([])).toBeNull();
});
