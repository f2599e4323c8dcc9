import { expect, test } from 'vitest';
import { studentT95 } from '../../src/compare/student-t.ts';

// The printed table of Student's t, 97.5 % column, from memory.
test.each([
  [1, 12.706],
  [2, 4.303],
  [3, 3.182],
  [4, 2.776],
  [5, 2.571],
  [10, 2.228],
  [16, 2.12],
  [30, 2.042],
  [120, 1.98],
])('with %i degrees of freedom it is %d', (degrees, printed) => {
  expect(studentT95(degrees)).toBeCloseTo(printed, 3);
});

test('a part of a degree of freedom is a mistake of the caller', () => {
  expect(() => studentT95(1.5)).toThrow('whole degrees of freedom');
  expect(() => studentT95(0)).toThrow('whole degrees of freedom');
});
