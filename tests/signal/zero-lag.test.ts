import fc from 'fast-check';
import { expect, test } from 'vitest';
import { uniformFrom } from '../../src/flow/prng.ts';
import { type Measured, smoothZeroLag } from '../../src/signal/zero-lag.ts';
import { mostLikelyPath } from './dense-smoother.ts';

const MOBILITY = { acceleration: 2e4, bridgeMs: 250 };

/** A signal sampled at `fps`. */
const sampled = (signal: (seconds: number) => number, fps: number, seconds: number, variance: number): readonly Measured[] =>
  Array.from({ length: Math.round(fps * seconds) }, (_, i) => ({ tMs: (i * 1000) / fps, value: signal(i / fps), variance }));
/** Foot taps as raised cosines. */
const taps = (hz: number, range: number) => (s: number) => (range * (1 - Math.cos(2 * Math.PI * hz * s))) / 2;

test('the smoothed values are the most likely path, as a dense system of equations gives it', () => {
  const series = fc.array(
    fc.record({
      gapMs: fc.integer({ min: 5, max: 120 }),
      value: fc.option(fc.double({ min: -40, max: 40, noNaN: true }), { freq: 6 }),
      variance: fc.double({ min: 0.01, max: 9, noNaN: true }),
    }),
    { minLength: 3, maxLength: 12 },
  );
  fc.assert(
    fc.property(series, fc.double({ min: 100, max: 1e6, noNaN: true }), (steps, acceleration) => {
      let tMs = 0;
      const rows = steps.map(({ gapMs, ...rest }) => {
        tMs += gapMs;
        return { tMs, ...rest };
      });
      const first = rows.findIndex((r) => r.value !== null);
      const last = rows.findLastIndex((r) => r.value !== null);
      fc.pre(first >= 0);
      const smooth = smoothZeroLag(rows, { acceleration, bridgeMs: 1e6 });
      const expected = mostLikelyPath(rows.slice(first, last + 1), acceleration);
      expected.forEach((e, i) => {
        expect(Math.abs((smooth[first + i] as number) - e)).toBeLessThan(1e-6 * Math.max(1, Math.abs(e)));
      });
      expect(smooth.slice(0, first).every((v) => v === null) && smooth.slice(last + 1).every((v) => v === null)).toBe(true);
    }),
    { numRuns: 200 },
  );
});

test('a straight line stays itself, to its very ends', () => {
  const line = sampled((s) => 3 + 20 * s, 30, 4, 0.2);
  smoothZeroLag(line, MOBILITY).forEach((v, i) => {
    expect(v).toBeCloseTo(line[i]?.value as number, 1);
  });
});

test('a slow tap is neither late nor early', () => {
  const signal = taps(0.5, 12);
  const smooth = smoothZeroLag(sampled(signal, 60, 6, 0.1), { acceleration: 4e6, bridgeMs: 250 });
  const peak = smooth.indexOf(Math.max(...smooth.slice(0, 120).map((v) => v ?? 0)));
  expect(Math.abs((peak * 1000) / 60 - 1000)).toBeLessThanOrEqual(17);
});

test('foot taps of four a second lose less than 0.2 degrees at the top', () => {
  const series = sampled(taps(4, 14), 30, 5, 0.1);
  const smooth = smoothZeroLag(series, { acceleration: 4e6, bridgeMs: 250 });
  const inner = series.map((s, i) => ({ seen: s.value as number, smooth: smooth[i] as number })).slice(15, -15);
  const tops = inner.filter((v, i) => v.seen >= (inner[i - 1]?.seen ?? 99) && v.seen >= (inner[i + 1]?.seen ?? 99));
  expect(tops.length).toBeGreaterThan(10);
  for (const top of tops) expect(top.seen - top.smooth).toBeLessThan(0.2);
});

test('noise is taken out of a slow movement', () => {
  const random = uniformFrom(7);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const signal = taps(0.25, 40);
  const series = sampled(signal, 30, 20, 4).map((s) => ({ ...s, value: (s.value as number) + 2 * normal() }));
  const smooth = smoothZeroLag(series, { acceleration: 2e3, bridgeMs: 250 });
  const rms = (pick: (i: number) => number) => Math.sqrt(series.reduce((sum, _, i) => sum + pick(i) ** 2, 0) / series.length);
  const before = rms((i) => (series[i]?.value as number) - signal(i / 30));
  const after = rms((i) => (smooth[i] as number) - signal(i / 30));
  expect(before).toBeGreaterThan(1.8);
  expect(after).toBeLessThan(0.5 * before);
});

test('15 and 60 frames a second tell the same movement', () => {
  const at = (fps: number) => smoothZeroLag(sampled(taps(0.5, 15), fps, 6, 0.1), MOBILITY);
  const slow = at(15);
  const quick = at(60);
  slow.forEach((v, i) => {
    expect(Math.abs((v as number) - (quick[4 * i] as number))).toBeLessThan(0.3);
  });
});

test('a short hole is bridged along the movement, a long one stays a hole', () => {
  const signal = taps(0.5, 12);
  const without = (fromMs: number, toMs: number) =>
    sampled(signal, 30, 6, 0.1).map((s) => (s.tMs >= fromMs && s.tMs <= toMs ? { ...s, value: null } : s));
  const short = smoothZeroLag(without(1400, 1590), MOBILITY);
  expect(short.every((v) => v !== null)).toBe(true);
  expect(Math.abs((short[45] as number) - signal(1.5))).toBeLessThan(0.5);
  const long = without(1400, 1900);
  expect(smoothZeroLag(long, MOBILITY).map((v) => v === null)).toEqual(long.map((s) => s.value === null));
});

test('the two sides of a long hole do not touch', () => {
  const series = sampled(taps(0.5, 12), 30, 6, 0.1).map((s) => (s.tMs > 2000 && s.tMs < 3000 ? { ...s, value: null } : s));
  const changed = series.map((s) => (s.tMs >= 3000 && s.value !== null ? { ...s, value: s.value + 30 } : s));
  const before = (all: readonly Measured[]) => smoothZeroLag(all, MOBILITY).slice(0, 60);
  expect(before(changed)).toEqual(before(series));
});

test('nothing measured gives nothing, and a single value stays itself', () => {
  expect(smoothZeroLag([], MOBILITY)).toEqual([]);
  expect(smoothZeroLag([{ tMs: 0, value: null, variance: 1 }], MOBILITY)).toEqual([null]);
  expect(smoothZeroLag([{ tMs: 0, value: 7, variance: 1 }], MOBILITY)).toEqual([7]);
});
