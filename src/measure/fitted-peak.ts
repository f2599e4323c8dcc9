import { factorise, solveFactored } from '../flow/symmetric-solve.ts';
import type { RawAngle } from './movements.ts';

/** Frames farther from the peak than this share of the movement's time are never taken. Chosen. */
const MOST_SHARE = 0.2;
/** Fewer frames than this make no curve. */
const LEAST_FRAMES = 3;
/** What tops may look like: held for this share of the time, else like a raised cosine; and where they may lie beside the highest frame, in frame times. */
const HELD_SHARES = [0, 0.2, 0.4];
const ASIDE = [-0.4, 0, 0.4];
/** A movement is found where this share of it is left: raised cosines have come to that angle of theirs there. */
const EDGE_ANGLE = Math.acos(2 * 0.1 - 1);

interface Peaked {
  readonly startMs: number;
  readonly peakMs: number;
  readonly endMs: number;
  readonly rangeDeg: number;
}

/**
 * How high a movement went, told by a parabola through the measured angles around its peak, weighing alike: the highest of noisy values is too high. As many frames are taken as
 * make the least error together: what their noise leaves, and what a parabola at these very times makes of tops of other shapes.
 * Lag: none, the parabola is read at the peak's own time.
 * @param turned angles that rise in the exercise's direction
 * @param noiseDeg standard deviation of one frame's angle
 * @returns null when too few frames were measured there
 */
export function fittedPeak(turned: readonly RawAngle[], movement: Peaked, noiseDeg: number): number | null {
  const { startMs, peakMs, endMs, rangeDeg } = movement;
  const lengthMs = endMs - startMs;
  const near = turned
    .flatMap(({ tMs, measured }) => (measured ? [{ t: (tMs - peakMs) / lengthMs, deg: measured.deg }] : []))
    .filter(({ t }) => Math.abs(t) <= MOST_SHARE)
    .sort((a, b) => Math.abs(a.t) - Math.abs(b.t));
  let best: { readonly deg: number; readonly square: number } | null = null;
  for (let n = LEAST_FRAMES; n <= near.length; n++) {
    const frames = near.slice(0, n);
    const shares = middleShares(frames.map(({ t }) => t));
    if (!shares) continue;
    const told = (value: (i: number) => number) => shares.reduce((sum, share, i) => sum + share * value(i), 0);
    const apart = (2 * Math.abs((frames[n - 1] as { readonly t: number }).t)) / n;
    const off = Math.max(
      ...HELD_SHARES.flatMap((held) =>
        ASIDE.map((aside) => Math.abs(told((i) => topAt((frames[i] as { readonly t: number }).t - aside * apart, held)) - 1)),
      ),
    );
    const square = (off * rangeDeg) ** 2 + shares.reduce((sum, share) => sum + share ** 2, 0) * noiseDeg ** 2;
    if (!best || square < best.square) best = { deg: told((i) => (frames[i] as { readonly deg: number }).deg), square };
  }
  return best?.deg ?? null;
}

/** A movement's height as a share of its whole, `t` of its time beside the middle of its top. */
function topAt(t: number, held: number): number {
  const gone = Math.max(0, Math.abs(t) - held / 2) / (0.5 - held / 2);
  return (1 + Math.cos(EDGE_ANGLE * Math.min(gone, 1))) / 2;
}

/** What each of some values counts for in the value at 0 of the parabola through them; null when they make none. */
function middleShares(times: readonly number[]): readonly number[] | null {
  const sum = (power: number) => times.reduce((s, t) => s + t ** power, 0);
  const s = [0, 1, 2, 3, 4].map(sum) as [number, number, number, number, number];
  const m = Float64Array.of(s[0], 0, 0, s[1], s[2], 0, s[2], s[3], s[4]);
  if (!factorise(m, 3)) return null;
  const v = Float64Array.of(1, 0, 0);
  solveFactored(m, 3, v);
  return times.map((t) => (v[0] as number) + (v[1] as number) * t + (v[2] as number) * t * t);
}
