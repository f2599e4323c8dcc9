import type { RawAngle } from './movements.ts';

/**
 * How far on either side of a peak may be looked, as a share of the movement's time, and how far a parabola over that is off at the worst, as a share of the range: of
 * raised cosines whose top is held for 0 to 0.4 of their time, computed. More frames are worth it where noise is larger than that.
 */
const AROUND: readonly { readonly share: number; readonly offShare: number }[] = [
  { share: 0.09, offShare: 0.0022 },
  { share: 0.12, offShare: 0.0062 },
  { share: 0.15, offShare: 0.011 },
  { share: 0.18, offShare: 0.016 },
];
/** Variance of a parabola's middle over n alike frames: this many times that of one of them, over n. */
const MIDDLE_OF_PARABOLA = 2.25;
/** Fewer frames than this make no curve. */
const LEAST_FRAMES = 4;

interface Peaked {
  readonly startMs: number;
  readonly peakMs: number;
  readonly endMs: number;
  readonly rangeDeg: number;
}

/**
 * How high a movement went, told by a parabola through the measured angles around its peak, weighing alike: the highest of noisy values is too high. The noisier the angles, the
 * more of them are taken, as long as what their number saves is more than what the shape of the top may cost.
 * Lag: none, the parabola is read at the peak's own time. A peak as round as a sine's is lowered by less than 0.003 of its height.
 * @param turned angles that rise in the exercise's direction
 * @param noiseDeg standard deviation of one frame's angle
 * @returns null when too few frames were measured there
 */
export function fittedPeak(turned: readonly RawAngle[], movement: Peaked, noiseDeg: number): number | null {
  const { startMs, peakMs, endMs, rangeDeg } = movement;
  const within = (share: number) => {
    const reachMs = share * (endMs - startMs);
    return turned.flatMap(({ tMs, measured }) =>
      measured && Math.abs(tMs - peakMs) <= reachMs ? [{ t: (tMs - peakMs) / reachMs, deg: measured.deg }] : [],
    );
  };
  const tried = AROUND.map(({ share, offShare }) => {
    const frames = within(share);
    return { frames, square: (offShare * rangeDeg) ** 2 + (MIDDLE_OF_PARABOLA * noiseDeg ** 2) / frames.length };
  });
  const enough = tried.filter(({ frames }) => frames.length >= LEAST_FRAMES);
  const [first, ...others] = enough;
  return first ? middleOf(others.reduce((best, at) => (at.square < best.square ? at : best), first).frames) : null;
}

/** The value at 0 of the parabola through some points; null when they make none. */
function middleOf(near: readonly { readonly t: number; readonly deg: number }[]): number | null {
  // Normal equations of deg = a + b t + c t^2; only a is wanted. Cramer's rule.
  const sum = (of: (p: { readonly t: number; readonly deg: number }) => number) => near.reduce((s, p) => s + of(p), 0);
  const n = near.length;
  const [t1, t2, t3, t4] = [sum((p) => p.t), sum((p) => p.t ** 2), sum((p) => p.t ** 3), sum((p) => p.t ** 4)];
  const [y0, y1, y2] = [sum((p) => p.deg), sum((p) => p.deg * p.t), sum((p) => p.deg * p.t ** 2)];
  const whole = n * (t2 * t4 - t3 * t3) - t1 * (t1 * t4 - t3 * t2) + t2 * (t1 * t3 - t2 * t2);
  if (Math.abs(whole) < 1e-9) return null;
  return (y0 * (t2 * t4 - t3 * t3) - t1 * (y1 * t4 - t3 * y2) + t2 * (y1 * t3 - t2 * y2)) / whole;
}
