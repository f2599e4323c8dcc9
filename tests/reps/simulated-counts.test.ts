import { expect, test } from 'vitest';
import { findMovements } from '../../src/measure/movements.ts';
import { type CounterState, startCounter, stepCounter } from '../../src/reps/live-counter.ts';
import { deg } from '../../src/units.ts';
import { type SimulatedSet, simulatedSet } from './simulated-set.ts';

const SETS = 1200;
/** Seeds on which nothing was chosen or tried. */
const FIRST_SEED = 7_000_001;

/** The complete movements as heard live, from the raw angles. */
function heardLive({ series, exercise }: SimulatedSet): number {
  let state: CounterState | null = null;
  let count = 0;
  for (const { tMs, measured } of series) {
    if (!measured) continue;
    if (!state) {
      state = startCounter(tMs, deg(measured.deg));
      continue;
    }
    const [next, movement] = stepCounter(state, tMs, deg(measured.deg), exercise.rule);
    state = next;
    if (movement?.complete) count++;
  }
  return count;
}

const share = (list: readonly number[], holds: (n: number) => boolean): number => list.filter(holds).length / list.length;
const percent = (x: number): string => `${(100 * x).toFixed(2)} %`;
/** How often each difference came, as "-1: 9, 0: 1190". */
const tally = (list: readonly number[]): string =>
  [...new Set(list)]
    .sort((a, b) => a - b)
    .map((d) => `${d}: ${list.filter((x) => x === d).length}`)
    .join(', ');

const sets = Array.from({ length: SETS }, (_, i) => simulatedSet(FIRST_SEED + i)).map((set) => {
  const { found } = findMovements(set.series, set.exercise, 0);
  const noticeable = set.movements.filter((m) => !m.complete && m.rangeDeg >= set.exercise.rule.noticeDeg);
  return {
    set,
    true: set.movements.filter((m) => m.complete).length,
    counted: found.filter((m) => m.complete).length,
    truePartial: noticeable.length,
    keptApart: noticeable.filter((m) => found.some((f) => !f.complete && f.startMs < m.endMs && f.endMs > m.startMs)).length,
    live: heardLive(set),
  };
});
const off = sets.map((s) => s.counted - s.true);

test('the finished count is exact in 98 of 100 simulated sets and within one in 999 of 1000', () => {
  console.log(`${SETS} simulated sets, counted less true: ${tally(off)}`);
  console.log(`exact ${percent(share(off, (d) => d === 0))}, within one ${percent(share(off, (d) => Math.abs(d) <= 1))}`);
  expect(share(off, (d) => d === 0)).toBeGreaterThanOrEqual(0.98);
  expect(share(off, (d) => Math.abs(d) <= 1)).toBeGreaterThanOrEqual(0.999);
});

test('of the partial movements that are large enough to be noticed, 95 of 100 are kept apart', () => {
  const total = sets.reduce((sum, s) => sum + s.truePartial, 0);
  const kept = sets.reduce((sum, s) => sum + s.keptApart, 0);
  console.log(`partial movements kept apart: ${kept} of ${total}, ${percent(kept / total)}`);
  expect(total).toBeGreaterThan(500);
  expect(kept / total).toBeGreaterThanOrEqual(0.95);
});

test('the live count differs from the finished one by at most one in 98 of 100 sets', () => {
  const apart = sets.map((s) => s.live - s.counted);
  console.log(`live less finished: ${tally(apart)}`);
  // A first movement that is partial counts live, since nothing full was seen yet to hold it against.
  const noPartial = sets.filter((s) => s.set.movements.every((m) => m.complete)).map((s) => s.live - s.counted);
  console.log(`the same without partial movements: equal ${percent(share(noPartial, (d) => d === 0))}`);
  expect(share(apart, (d) => Math.abs(d) <= 1)).toBeGreaterThanOrEqual(0.98);
  expect(share(noPartial, (d) => d === 0)).toBeGreaterThanOrEqual(0.95);
});

test('the simulated sets are what they claim to be', () => {
  const all = sets.map((s) => s.set);
  expect(Math.min(...all.map((s) => s.fps))).toBeLessThan(9);
  expect(Math.max(...all.map((s) => s.fps))).toBeGreaterThan(55);
  expect(Math.min(...all.map((s) => s.tempoHz))).toBeLessThan(0.15);
  expect(Math.max(...all.map((s) => s.tempoHz))).toBeGreaterThan(3.5);
  const frames = all.reduce((sum, s) => sum + s.series.length, 0);
  const unseen = all.reduce((sum, s) => sum + s.series.filter((x) => x.measured === null).length, 0);
  expect(unseen / frames).toBeGreaterThan(0.05);
});

test('the same seed gives the same set', () => {
  expect(simulatedSet(5)).toEqual(simulatedSet(5));
});
