import { expect, test } from 'vitest';
import { holeLimit } from '../../src/signal/hole-limit.ts';
import { ms } from '../../src/units.ts';

const at = (fps: number) => Array.from({ length: 50 }, (_, i) => (i * 1000) / fps);

test('at usual frame rates a quarter of a second is bridged', () => {
  expect(holeLimit(at(30), ms(120))).toBe(250);
  expect(holeLimit(at(60), ms(120))).toBe(250);
});

test('with few frames three dropped ones in a row are bridged', () => {
  expect(holeLimit(at(8), ms(120))).toBeGreaterThan(500);
  expect(holeLimit(at(8), ms(120))).toBeLessThan(625);
});

test('an exercise of long movements bridges holes that are too short to hide one', () => {
  expect(holeLimit(at(30), ms(500))).toBe(500);
});

test('without frames the usual limit holds', () => {
  expect(holeLimit([], ms(120))).toBe(250);
});
