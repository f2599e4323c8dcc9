import fc from 'fast-check';
import { expect, test } from 'vitest';
import { rangeChangeOf } from '../../src/compare/range-error.ts';
import { type ComparableSet, type SetComparison, setAgainstSet, sideAgainstSide } from '../../src/compare/set-against-set.ts';
import { EXERCISE_IDS } from '../../src/exercises/exercise.ts';
import type { Result } from '../../src/result.ts';
import { rep, setOf } from './set-builder.ts';

function value<T, E extends { readonly kind: string }>(result: Result<T, E>): T {
  if (!result.ok) throw new Error(result.error.kind);
  return result.value;
}

const right = (ranges: readonly number[]) => setOf(ranges, { side: 'right' });

test('a side that lifts less shows a signed difference in degrees', () => {
  const { range } = value(sideAgainstSide(setOf([6, 6.2, 5.8]), right([13, 12.9, 13.1])));
  expect(range).toMatchObject({ rangeDeg: 6, referenceDeg: 13, differenceDeg: -7, verdict: 'real', basis: 'rendered-bodies' });
});

test('a difference just below the minimal detectable change is within the error, even when all repetitions are alike', () => {
  for (const exercise of EXERCISE_IDS) {
    const mdc = rangeChangeOf(exercise, 'occasions');
    const against = (more: number) =>
      value(setAgainstSet(setOf(Array(5).fill(30 + more), { exercise }), setOf(Array(5).fill(30), { exercise }))).range;
    expect(against(mdc - 0.01).verdict).toBe('within-error');
    expect(against(0.01 - mdc).verdict).toBe('within-error');
    expect(against(mdc + 0.01).verdict).toBe('real');
    expect(against(-mdc - 0.01).verdict).toBe('real');
  }
});

test('foot taps by stickers are compared by the error of stickers, and by the other one as soon as one of them is not', () => {
  const byStickers = (set: ComparableSet): ComparableSet => ({
    ...set,
    reps: set.reps.map((r) => ({ ...r, source: 'stickers' })),
  });
  const [own, other] = [setOf(Array(5).fill(20)), right(Array(5).fill(21.5))];
  const mdc = (of: ComparableSet, to: ComparableSet) => value(sideAgainstSide(of, to)).range;
  expect(mdc(byStickers(own), byStickers(other))).toMatchObject({
    verdict: 'real',
    mdcDeg: rangeChangeOf('foot-tap', 'legs', 'stickers'),
  });
  expect(mdc(byStickers(own), other)).toMatchObject({ verdict: 'within-error', mdcDeg: rangeChangeOf('foot-tap', 'legs') });
  expect(mdc(own, byStickers(other)).mdcDeg).toBe(rangeChangeOf('foot-tap', 'legs'));
});

test('repetitions that scatter widely need a larger difference', () => {
  expect(value(setAgainstSet(setOf([2, 10, 18]), setOf([1, 6, 12]))).range.verdict).toBe('within-error');
  expect(value(setAgainstSet(setOf([10, 10, 10]), setOf([6, 6, 6]))).range.verdict).toBe('real');
});

const ranges = fc.array(fc.integer({ min: 3, max: 60 }), { minLength: 3, maxLength: 20 });

test('nothing is called real that does not exceed the minimal detectable change', () => {
  fc.assert(
    fc.property(ranges, ranges, fc.constantFrom(...EXERCISE_IDS), (one, other, exercise) => {
      const { range } = value(setAgainstSet(setOf(one, { exercise }), setOf(other, { exercise })));
      expect(range.limitDeg).toBeGreaterThanOrEqual(range.mdcDeg);
      expect(range.verdict).toBe(Math.abs(range.differenceDeg) > range.limitDeg ? 'real' : 'within-error');
    }),
  );
});

test('exchanging the sets turns the sign and keeps the verdict', () => {
  fc.assert(
    fc.property(ranges, ranges, (one, other) => {
      const there = value(sideAgainstSide(setOf(one), right(other))).range;
      const back = value(sideAgainstSide(right(other), setOf(one))).range;
      expect(back.differenceDeg).toBeCloseTo(-there.differenceDeg, 10);
      expect(back.verdict).toBe(there.verdict);
    }),
  );
});

test('partial movements take no part', () => {
  const set = setOf([10, 10, 10]);
  const withPartials = { ...set, reps: [...set.reps, rep({ rangeDeg: 1, peakMs: 9000, complete: false })] };
  expect(setAgainstSet(withPartials, setOf([6, 6, 6]))).toEqual(setAgainstSet(set, setOf([6, 6, 6])));
});

test('counts and holds are compared in percent, and a hold of zero gives none', () => {
  const held = (holdMs: number): ComparableSet => ({
    ...setOf([]),
    reps: [1, 2, 3, 4].map((s) => rep({ rangeDeg: 10, peakMs: s * 1000, holdMs })),
  });
  const { count, holdMs }: SetComparison = value(setAgainstSet(held(150), setOf([10, 10, 10])));
  expect(count).toMatchObject({ value: 4, reference: 3, percent: expect.closeTo(33.33, 2) });
  expect(holdMs).toEqual({ value: 150, reference: 200, percent: -25 });
  expect(value(setAgainstSet(held(150), held(0))).holdMs.percent).toBeNull();
});

test.each<[string, Result<SetComparison, { readonly kind: string }>, object]>([
  ['two legs as one', setAgainstSet(setOf([9, 9, 9]), right([9, 9, 9])), { kind: 'different-sides' }],
  ['one leg as two', sideAgainstSide(setOf([9, 9, 9]), setOf([9, 9, 9])), { kind: 'same-side', side: 'left' }],
  [
    'two exercises',
    setAgainstSet(setOf([9, 9, 9]), setOf([9, 9, 9], { exercise: 'leg-raise' })),
    { kind: 'different-exercises', found: 'foot-tap', reference: 'leg-raise' },
  ],
  ['two repetitions', setAgainstSet(setOf([9, 9]), setOf([9, 9, 9])), { kind: 'too-few-repetitions', found: 2, needed: 3 }],
  ['an empty set', setAgainstSet(setOf([9, 9, 9]), setOf([])), { kind: 'too-few-repetitions', found: 0, needed: 3 }],
])('%s: not compared', (_, result, error) => {
  expect(result).toEqual({ ok: false, error });
});
