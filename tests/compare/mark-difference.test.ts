import { describe, expect, test } from 'vitest';
import { markDifference } from '../../src/compare/mark-difference.ts';
import { followedError } from '../../src/compare/mark-error.ts';
import { rangeChangeOf } from '../../src/compare/range-error.ts';
import { deg, ms } from '../../src/units.ts';

const marks = (errorDeg: number, ...angles: readonly number[]) =>
  angles.map((angleDeg) => ({ angleDeg: deg(angleDeg), errorDeg: deg(errorDeg) }));

describe('marked angles of two legs', () => {
  test('differ really when they do by more than the error of marks and their own scatter', () => {
    const found = markDifference('leg-raise', marks(3.5, 60, 60, 60), marks(3.5, 50, 50, 50));
    expect(found).toMatchObject({ ok: true, value: { differenceDeg: 10, verdict: 'real' } });
    if (found.ok) expect(found.value.limitDeg).toBeCloseTo(rangeChangeOf('leg-raise', 'marks'), 1);
    expect(markDifference('leg-raise', marks(3.5, 60, 60, 60), marks(3.5, 57, 57, 57))).toMatchObject({
      value: { verdict: 'within-error' },
    });
    expect(markDifference('leg-raise', marks(3.5, 50, 60, 70), marks(3.5, 40, 50, 60))).toMatchObject({
      value: { verdict: 'within-error' },
    });
  });

  test('that are known less well must differ by more: 1.96 times the root of 2 of what one of them is out by', () => {
    const found = markDifference('leg-raise', marks(8, 60, 60, 60), marks(8, 50, 50, 50));
    expect(found).toMatchObject({ ok: true, value: { verdict: 'within-error' } });
    if (found.ok) expect(found.value.limitDeg).toBeCloseTo(8 * Math.SQRT2);
  });

  test('need three of each', () => {
    expect(markDifference('leg-raise', marks(3, 60, 60), marks(3, 50, 50, 50))).toEqual({
      ok: false,
      error: { kind: 'too-few-repetitions', found: 2, needed: 3 },
    });
  });
});

test('a mark in a followed movement is as uncertain as the movement, and never less than marks are', () => {
  const rep = {
    number: 1,
    startMs: ms(1000),
    peakMs: ms(2000),
    endMs: ms(3000),
    startDeg: deg(0),
    peakDeg: deg(50),
    rangeDeg: deg(50),
    holdMs: ms(0),
    complete: true,
    flags: [],
    uncertaintyDeg: deg(6),
    source: 'flow',
    footDeg: null,
    footUncertaintyDeg: null,
    upMs: null,
    sankAfterMs: null,
  } as const;
  expect(followedError('leg-raise', [rep], ms(2000))).toBe(6);
  expect(followedError('leg-raise', [rep], ms(3500))).toBeCloseTo(1.96 * 1.8);
  expect(followedError('leg-raise', [{ ...rep, uncertaintyDeg: deg(1) }], ms(2000))).toBeCloseTo(1.96 * 1.8);
});
