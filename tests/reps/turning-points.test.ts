import fc from 'fast-check';
import { expect, test } from 'vitest';
import { turningPoints } from '../../src/reps/turning-points.ts';

const values = fc.array(fc.double({ min: -50, max: 50, noNaN: true }), { maxLength: 80 });
const reversal = fc.double({ min: 0.1, max: 20, noNaN: true });

test('a rise and a fall turn once at the top', () => {
  expect(turningPoints([0, 2, 5, 9, 6, 1], 3)).toEqual([
    { index: 0, value: 0, kind: 'valley' },
    { index: 3, value: 9, kind: 'peak' },
    { index: 5, value: 1, kind: 'valley' },
  ]);
});

test('a reversal smaller than asked for is no turn', () => {
  expect(turningPoints([0, 9, 7, 10, 1], 3).map((p) => p.value)).toEqual([0, 10, 1]);
});

test('a series that never moves far enough does not turn', () => {
  expect(turningPoints([1, 2, 1.5, 2.4], 3)).toEqual([]);
  expect(turningPoints([], 3)).toEqual([]);
});

test('valleys and peaks alternate and lie at least the reversal apart', () => {
  fc.assert(
    fc.property(values, reversal, (series, least) => {
      const points = turningPoints(series, least);
      points.forEach((point, i) => {
        const before = points[i - 1];
        if (!before) return;
        expect(point.kind).not.toBe(before.kind);
        expect(point.index).toBeGreaterThan(before.index);
        expect(Math.abs(point.value - before.value)).toBeGreaterThanOrEqual(least - 1e-9);
      });
    }),
  );
});

test('turned upside down, valleys become peaks', () => {
  fc.assert(
    fc.property(values, reversal, (series, least) => {
      const turned = turningPoints(
        series.map((v) => -v),
        least,
      );
      const swapped = turned.map((p) => ({ index: p.index, kind: p.kind === 'peak' ? 'valley' : 'peak' }));
      expect(swapped).toEqual(turningPoints(series, least).map(({ index, kind }) => ({ index, kind })));
    }),
  );
});
