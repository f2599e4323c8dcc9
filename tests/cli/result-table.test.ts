import { expect, test } from 'vitest';
import { resultTable } from '../../src/cli/result-table.ts';
import { ms } from '../../src/units.ts';
import { rep, result } from '../record/set-builders.ts';

test('the first line says what was counted and how far', () => {
  const [first] = resultTable(result([rep(1), rep(2), rep(3, { complete: false })])).split('\n');
  expect(first).toBe('foot-tap, left: 2 complete, 1 partial, median range 14.8 +/- 1.1 degrees (95 %)');
});

test('each repetition has its line, under one row of heads, in columns', () => {
  const lines = resultTable(result([rep(1), rep(12, { complete: false, flags: ['partial', 'knee-bent'] })])).split('\n');
  expect(lines[1]?.trim().startsWith('rep  start s')).toBe(true);
  expect(lines[2]?.trim()).toMatch(/^1 .* yes$/);
  expect(lines[3]?.trim()).toMatch(/^12 .* no {2}partial knee-bent$/);
  const column = lines[1]?.indexOf('range deg') as number;
  for (const line of lines.slice(2, 4)) expect(line.slice(column, column + 9).trim()).toBe('14.8');
});

test('without repetitions there is no table, and no range', () => {
  const lines = resultTable(result([])).split('\n');
  expect(lines[0]).toBe('foot-tap, left: 0 complete, 0 partial');
  expect(lines[1]).toBe('2 of 3 frames measured');
  expect(lines.join()).not.toContain('tempo');
});

test('foot taps have a line on tempo, hold and the last third; heel stands on their time', () => {
  const taps = resultTable(result(Array.from({ length: 9 }, (_, i) => rep(i + 1))));
  expect(taps).toMatch(/^tempo \d+ a minute, uneven by \d+ %$/m);
  expect(taps).toMatch(/^held at the top for \d\.\d\d s in the middle$/m);
  expect(taps).toMatch(/^last third against first: range 0\.0 degrees, within the error of \d\.\d$/m);
  const stands = resultTable({ ...result([rep(1, { upMs: ms(4950), sankAfterMs: ms(2850) })]), exercise: 'heel-stand' });
  expect(stands).toContain('forefoot up for: 4.95 s (sank after 2.85 s)');
});

test('warnings are said', () => {
  expect(resultTable(result([rep(1)]))).toContain('careful: low-frame-rate');
});
