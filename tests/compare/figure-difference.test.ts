import { expect, test } from 'vitest';
import { figureDifference } from '../../src/compare/figure-difference.ts';
import { deg } from '../../src/units.ts';

const figure = (valueDeg: number, uncertaintyDeg: number) => ({ valueDeg: deg(valueDeg), uncertaintyDeg: deg(uncertaintyDeg) });

test('a difference is real only beyond both errors together: errors of 3 and 4 make a limit of 5', () => {
  expect(figureDifference(figure(30, 3), figure(25, 4))).toEqual({ differenceDeg: 5, limitDeg: 5, verdict: 'within-error' });
  expect(figureDifference(figure(30.1, 3), figure(25, 4)).verdict).toBe('real');
  expect(figureDifference(figure(25, 4), figure(30.1, 3))).toMatchObject({ verdict: 'real', limitDeg: 5 });
});
