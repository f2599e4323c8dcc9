import { expect, test } from 'vitest';
import { footTapProfile } from '../../src/compare/foot-tap-profile.ts';
import { curveUntil, rep, setOf } from './set-builder.ts';

function profileOf(set: Parameters<typeof footTapProfile>[0]) {
  const profile = footTapProfile(set);
  if (!profile.ok) throw new Error(profile.error.kind);
  return profile.value;
}

const EVEN = Array<number>(9).fill(10);
/** Peaks with these times between them, ms, each movement of 10 degrees. */
function tapsAfter(gaps: readonly number[]) {
  let t = 500;
  const reps = [0, ...gaps].map((gap, i) => {
    t += gap;
    return rep({ rangeDeg: 10, peakMs: t }, i);
  });
  return { exercise: 'foot-tap' as const, reps, curve: curveUntil(t + 500) };
}

test('one tap a second is a tempo of 60 without variation', () => {
  expect(profileOf(setOf(EVEN)).tempo).toMatchObject({ ok: true, value: { perMinute: 60, variation: 0, intervals: 8 } });
});

test('the variation is the deviation of the intervals over their mean', () => {
  // 400, 600: mean 500, standard deviation 141.4.
  expect(profileOf(tapsAfter([400, 600])).tempo).toMatchObject({
    ok: true,
    value: { perMinute: 120, variation: expect.closeTo(0.2828, 4) },
  });
});

test('a partial tap keeps time, and a stretch in which the angle was lost does not', () => {
  const set = setOf(EVEN);
  const reps = set.reps.map((r, i) => (i === 4 ? { ...r, complete: false } : r));
  expect(profileOf({ ...set, reps }).tempo).toMatchObject({ value: { perMinute: 60, intervals: 8 } });
  const without = set.reps.filter((_, i) => i !== 4);
  expect(profileOf({ ...set, reps: without, curve: curveUntil(10_000, [4600, 5400]) }).tempo).toMatchObject({
    value: { perMinute: 60, intervals: 6 },
  });
});

test('the hold is the median of the complete taps with their middle half', () => {
  const reps = [100, 200, 300, 400, 500].map((holdMs, i) => rep({ rangeDeg: 10, peakMs: 1000 * (i + 1), holdMs }, i));
  const partial = rep({ rangeDeg: 2, peakMs: 6000, holdMs: 5000, complete: false }, 5);
  const { hold } = profileOf({ ...setOf([]), reps: [...reps, partial] });
  expect(hold).toEqual({ medianMs: 300, fromMs: 200, toMs: 400 });
});

test('taps that become smaller by more than the error show a real loss, in degrees', () => {
  const { fatigue } = profileOf(setOf([14, 14.2, 13.8, 13, 12, 11, 8.2, 8, 7.8]));
  expect(fatigue).toMatchObject({ ok: true, value: { range: { differenceDeg: -6, verdict: 'real' } } });
});

test('taps that become smaller by less than the error show none', () => {
  const { fatigue } = profileOf(setOf([14, 14.2, 13.8, 14, 14, 14, 13.1, 13, 12.9]));
  expect(fatigue).toMatchObject({ ok: true, value: { range: { differenceDeg: -1, verdict: 'within-error' } } });
});

test('taps that slow down show it in movements a minute', () => {
  const slower = profileOf(tapsAfter([500, 510, 490, 600, 600, 700, 700, 990, 1000, 1010, 990])).fatigue;
  if (!slower.ok) throw new Error(slower.error.kind);
  expect(slower.value.tempo?.changePerMinute).toBeCloseTo(60 - 120, 0);
  expect(slower.value.tempo?.verdict).toBe('real');
});

test('a change of tempo smaller than its own scatter is within the error', () => {
  const uneven = profileOf(tapsAfter([300, 700, 500, 600, 600, 600, 600, 400, 800, 500, 600])).fatigue;
  if (!uneven.ok) throw new Error(uneven.error.kind);
  expect(uneven.value.tempo?.verdict).toBe('within-error');
});

test('too few taps say so for each part by itself', () => {
  const { tempo, hold, fatigue } = profileOf(setOf([10, 10]));
  expect(tempo).toEqual({ ok: false, error: { kind: 'too-few-intervals', found: 1, needed: 2 } });
  expect(hold?.medianMs).toBe(200);
  expect(fatigue).toEqual({ ok: false, error: { kind: 'too-few-repetitions', found: 2, needed: 9 } });
  expect(profileOf(setOf([])).hold).toBeNull();
});

test('a set of another exercise has no profile of taps', () => {
  expect(footTapProfile(setOf(EVEN, { exercise: 'leg-raise' }))).toEqual({
    ok: false,
    error: { kind: 'not-foot-taps', found: 'leg-raise' },
  });
});
