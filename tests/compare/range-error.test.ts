import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { rangeChangeOf, rangeErrorOf } from '../../src/compare/range-error.ts';

const REPORT = readFileSync(new URL('../../docs/accuracy.md', import.meta.url), 'utf8');
/** In the report's summary: the cell of the limits of the range, counted from 0. */
const LIMITS_CELL = 10;

test.each([
  ['foot-tap', 'foot taps'],
  ['leg-raise', 'leg raises'],
  ['knee-straighten', 'knee extensions'],
] as const)('%s: the standard error is no less than the errors in docs/accuracy.md scatter', (exercise, inReport) => {
  const row = REPORT.split('\n').find((line) => line.startsWith(`| ${inReport} | full | fused |`));
  const limits = row?.split('|')[LIMITS_CELL + 1]?.trim().split(' to ').map(Number);
  const [low, high] = limits ?? [];
  if (low === undefined || high === undefined) throw new Error(`no limits of ${inReport} in docs/accuracy.md`);
  const scatter = (high - low) / 2 / 1.96;
  expect(scatter).toBeGreaterThan(0);
  expect(rangeErrorOf(exercise).semDeg).toBeGreaterThanOrEqual(scatter);
  expect(rangeChangeOf(exercise)).toBeCloseTo(1.96 * Math.SQRT2 * rangeErrorOf(exercise).semDeg, 10);
});
