/** One measurement of a scalar, or null where there is none. */
export interface Measured {
  readonly tMs: number;
  readonly value: number | null;
  /** Variance of `value`. */
  readonly variance: number;
}

/** How the smoothed quantity moves. */
export interface Mobility {
  /** Spectral density of the white acceleration that drives it, (units/s^2)^2 per Hz. */
  readonly acceleration: number;
  /** Holes up to this long are bridged; longer ones stay holes. */
  readonly bridgeMs: number;
}

interface Belief {
  readonly x: number;
  readonly v: number;
  readonly pxx: number;
  readonly pxv: number;
  readonly pvv: number;
}

/** Variance of the first velocity, (units/s)^2: unknown. */
const FIRST_VELOCITY_VARIANCE = 1e4;

/**
 * Smooths a series without lag: constant-velocity Kalman filter forward, Rauch-Tung-Striebel pass backward, on the samples' own times.
 * Holes up to `bridgeMs` are filled by the motion model; in longer ones the result is null and the two sides do not touch.
 * Ends: the last value has no future and is as noisy as a causal filter's. Peaks: lowered by less than 0.2 of a degree for foot taps of
 * four a second with a variance of 0.1 deg^2 (tests/signal/zero-lag.test.ts).
 * F, H and the continuous white-noise-acceleration Q are the textbook ones (from memory; checked in the test against a matrix solution).
 * @returns one value a sample, null in holes
 */
export function smoothZeroLag(samples: readonly Measured[], { acceleration, bridgeMs }: Mobility): readonly (number | null)[] {
  const out: (number | null)[] = samples.map(() => null);
  for (const [from, to] of runsOf(samples, bridgeMs)) smoothRun(samples, from, to, acceleration, out);
  return out;
}

/** Index ranges [from, to] that begin and end with a value and hold no hole longer than `bridgeMs`. */
function runsOf(samples: readonly Measured[], bridgeMs: number): readonly (readonly [number, number])[] {
  const runs: [number, number][] = [];
  samples.forEach((s, i) => {
    if (s.value === null) return;
    const open = runs[runs.length - 1];
    const last = open && samples[open[1]];
    if (open && last && s.tMs - last.tMs <= bridgeMs) open[1] = i;
    else runs.push([i, i]);
  });
  return runs;
}

function predict(b: Belief, dt: number, q: number): Belief {
  const pxx = b.pxx + dt * (2 * b.pxv + dt * b.pvv) + (q * dt ** 3) / 3;
  const pxv = b.pxv + dt * b.pvv + (q * dt ** 2) / 2;
  return { x: b.x + dt * b.v, v: b.v, pxx, pxv, pvv: b.pvv + q * dt };
}

function correct(b: Belief, value: number, variance: number): Belief {
  const s = b.pxx + variance;
  const kx = b.pxx / s;
  const kv = b.pxv / s;
  const gap = value - b.x;
  return { x: b.x + kx * gap, v: b.v + kv * gap, pxx: (1 - kx) * b.pxx, pxv: (1 - kx) * b.pxv, pvv: b.pvv - kv * b.pxv };
}

function smoothRun(samples: readonly Measured[], from: number, to: number, q: number, out: (number | null)[]): void {
  const first = samples[from] as Measured;
  const filtered: Belief[] = [];
  const predicted: Belief[] = [];
  let belief: Belief = { x: first.value as number, v: 0, pxx: first.variance, pxv: 0, pvv: FIRST_VELOCITY_VARIANCE };
  for (let i = from; i <= to; i++) {
    const s = samples[i] as Measured;
    const ahead = i === from ? belief : predict(belief, (s.tMs - (samples[i - 1] as Measured).tMs) / 1000, q);
    belief = s.value === null || i === from ? ahead : correct(ahead, s.value, s.variance);
    predicted.push(ahead);
    filtered.push(belief);
  }
  let x = belief.x;
  let v = belief.v;
  out[to] = x;
  for (let i = to - 1; i >= from; i--) {
    const b = filtered[i - from] as Belief;
    const p = predicted[i - from + 1] as Belief;
    const dt = ((samples[i + 1] as Measured).tMs - (samples[i] as Measured).tMs) / 1000;
    // Smoother gain C = P F' (P-)^-1, written out for two states.
    const det = p.pxx * p.pvv - p.pxv * p.pxv;
    const ax = b.pxx + dt * b.pxv;
    const av = b.pxv + dt * b.pvv;
    const cxx = (ax * p.pvv - b.pxv * p.pxv) / det;
    const cxv = (b.pxv * p.pxx - ax * p.pxv) / det;
    const cvx = (av * p.pvv - b.pvv * p.pxv) / det;
    const cvv = (b.pvv * p.pxx - av * p.pxv) / det;
    const dx = x - p.x;
    const dv = v - p.v;
    x = b.x + cxx * dx + cxv * dv;
    v = b.v + cvx * dx + cvv * dv;
    out[i] = x;
  }
}
