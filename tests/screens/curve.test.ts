import { describe, expect, test } from 'vitest';
import { curvePath } from '../../src/screens/result/curve-path.ts';
import { scaleOf } from '../../src/screens/result/scale.ts';
import { deg, ms } from '../../src/units.ts';

describe('the curve of a set', () => {
  test('it breaks where nothing was measured', () => {
    const curve = { tMs: [0, 1, 2, 3, 4].map(ms), angleDeg: [deg(0), deg(5), null, deg(7), deg(8)] };
    expect(
      curvePath(
        curve,
        (t) => t * 10,
        (a) => a,
      ),
    ).toBe('M0 0L10 5M30 7L40 8');
  });
});

describe('a scale', () => {
  test('it maps its ends and what lies between', () => {
    const scale = scaleOf(0, 20, 100, 0, 5);
    expect([scale.at(0), scale.at(5), scale.at(20)]).toEqual([100, 75, 0]);
  });

  test('its ticks are round and not too many', () => {
    expect(scaleOf(-3, 17, 0, 1, 5).ticks).toEqual([0, 5, 10, 15]);
    expect(scaleOf(0, 7200, 0, 1, 6).ticks).toEqual([0, 1800, 3600, 5400, 7200]);
  });

  test('a range of nothing is still drawn', () => {
    const scale = scaleOf(5, 5, 0, 10, 4);
    expect(Number.isFinite(scale.at(5))).toBe(true);
    expect(scale.ticks.length).toBeGreaterThan(0);
  });
});
