import { type Deg, deg, degOfRad, type Ms, wrapped } from '../units.ts';
import type { AngleSample } from './movement.ts';

/** The fundamental of a signal in one cycle: `swingDeg / 2 * cos(2 pi (t - start) / T - delay)`. */
export interface Fundamental {
  /** From its lowest to its highest, deg. */
  readonly swingDeg: Deg;
  /** How much of the cycle goes by before it is highest, deg in [-180, 180). */
  readonly delayDeg: Deg;
  /** Standard error of half the swing, deg. */
  readonly errorDeg: Deg;
}

/** Fewer samples than this fix no level, swing and delay. */
const LEAST_SAMPLES = 5;

/**
 * Least squares fit of level, cosine and sine with the cycle's own length as the period (harmonic regression; with even samples it is the first
 * term of the Fourier series, whose phase is what the Hilbert transform gives for a sine. From memory, checked in the test against closed forms).
 * Uneven and missing samples need no filling in; noise need not be smoothed before. No lag.
 * @param samples any order, any number outside of the cycle, nulls are left out
 * @param noiseDeg standard deviation of a sample, white
 * @returns null with too few samples in the cycle, or when they lie so that the three cannot be told apart
 */
export function fundamentalOf(samples: readonly AngleSample[], startMs: Ms, endMs: Ms, noiseDeg: number): Fundamental | null {
  const within = samples.flatMap(({ tMs, deg }) =>
    deg === null || tMs < startMs || tMs > endMs ? [] : [{ turn: (2 * Math.PI * (tMs - startMs)) / (endMs - startMs), deg }],
  );
  const n = within.length;
  if (n < LEAST_SAMPLES) return null;
  const mean = (of: (s: { readonly turn: number; readonly deg: number }) => number) =>
    within.reduce((sum, s) => sum + of(s), 0) / n;
  const c = mean((s) => Math.cos(s.turn));
  const s = mean((x) => Math.sin(x.turn));
  const level = mean((x) => x.deg);
  const cc = mean((x) => (Math.cos(x.turn) - c) ** 2);
  const ss = mean((x) => (Math.sin(x.turn) - s) ** 2);
  const cs = mean((x) => (Math.cos(x.turn) - c) * (Math.sin(x.turn) - s));
  const cy = mean((x) => (Math.cos(x.turn) - c) * (x.deg - level));
  const sy = mean((x) => (Math.sin(x.turn) - s) * (x.deg - level));
  const det = cc * ss - cs * cs;
  if (det < 1e-6) return null;
  const a = (cy * ss - sy * cs) / det;
  const b = (sy * cc - cy * cs) / det;
  return {
    swingDeg: deg(2 * Math.hypot(a, b)),
    delayDeg: degOfRad(Math.atan2(b, a)),
    // The mean of the two coefficients' variances.
    errorDeg: deg(noiseDeg * Math.sqrt((cc + ss) / (2 * det * n))),
  };
}

/** A phase and its standard error. */
export interface Phase {
  readonly deg: Deg;
  readonly errorDeg: Deg;
}

/** By how much `later` comes after `earlier`, deg in [-180, 180); negative: before it. */
export const phaseBetween = (earlier: Fundamental, later: Fundamental): Phase => ({
  deg: deg(wrapped(later.delayDeg - earlier.delayDeg)),
  errorDeg: degOfRad(Math.hypot((2 * earlier.errorDeg) / earlier.swingDeg, (2 * later.errorDeg) / later.swingDeg)),
});

/**
 * Circular mean (direction of the sum of unit vectors), each weighted by the inverse of its variance. Textbook directional statistics, from memory.
 * @returns null for none, or when they cancel out
 */
export function meanPhase(phases: readonly Phase[]): Phase | null {
  let x = 0;
  let y = 0;
  let weights = 0;
  for (const phase of phases) {
    const weight = 1 / phase.errorDeg ** 2;
    x += weight * Math.cos((phase.deg * Math.PI) / 180);
    y += weight * Math.sin((phase.deg * Math.PI) / 180);
    weights += weight;
  }
  if (Math.hypot(x, y) <= 1e-9 * weights || weights === 0) return null;
  return { deg: deg(wrapped(degOfRad(Math.atan2(y, x)))), errorDeg: deg(1 / Math.sqrt(weights)) };
}
