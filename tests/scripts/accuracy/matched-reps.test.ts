import { expect, test } from 'vitest';
import { matchedReps } from '../../../scripts/accuracy/matched-reps.ts';
import type { MeasuredRep } from '../../../src/measure/set-result.ts';
import { deg, ms } from '../../../src/units.ts';
import { clip, trueRep } from './truth-builder.ts';

const rep = (startMs: number, endMs: number, rangeDeg: number, more: Partial<MeasuredRep> = {}): MeasuredRep => ({
  number: 1,
  startMs: ms(startMs),
  peakMs: ms((startMs + endMs) / 2),
  endMs: ms(endMs),
  startDeg: deg(0),
  peakDeg: deg(rangeDeg),
  rangeDeg: deg(rangeDeg),
  holdMs: ms(100),
  complete: true,
  flags: [],
  uncertaintyDeg: deg(2),
  source: 'flow',
  footDeg: null,
  footUncertaintyDeg: null,
  upMs: null,
  sankAfterMs: null,
  ...more,
});

test('each repetition is set against the true one that it overlaps most', () => {
  const truth = clip('foot-tap', [trueRep(1000, 2000, 10), trueRep(2000, 3000, 20)]);
  const matched = matchedReps({ reps: [rep(1100, 2200, 11), rep(2200, 3100, 17)] }, truth);
  expect(matched.map((m) => m.rangeErrorDeg).sort((a, b) => a - b)).toEqual([-3, 1]);
  expect(matched.filter((m) => m.held).map((m) => m.rangeErrorDeg)).toEqual([1]);
});

test('of two repetitions at one true one, only one is matched', () => {
  const truth = clip('foot-tap', [trueRep(1000, 3000, 10)]);
  const matched = matchedReps({ reps: [rep(1000, 1600, 4), rep(1700, 3000, 9)] }, truth);
  expect(matched.map((m) => m.rangeErrorDeg)).toEqual([-1]);
});

test('partial movements and movements where nothing was meant are not matched', () => {
  const truth = clip('foot-tap', [trueRep(1000, 2000, 10)]);
  const reps = [rep(1000, 2000, 10, { complete: false }), rep(4000, 5000, 10)];
  expect(matchedReps({ reps }, truth)).toEqual([]);
});

test('the peak of a leg raise is counted from the true rest, that of a foot tap is not', () => {
  const reps = [trueRep(1000, 3000, 50, 2)];
  const measured = { reps: [rep(1000, 3000, 50)] };
  expect(matchedReps(measured, clip('leg-raise', reps))[0]?.peakErrorDeg).toBe(0);
  expect(matchedReps(measured, clip('foot-tap', reps))[0]?.peakErrorDeg).toBe(-2);
});
