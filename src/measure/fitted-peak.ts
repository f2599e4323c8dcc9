import type { RawAngle } from './movements.ts';

/** Looked at on either side of a peak: this share of the movement's time, so that a quick one is not flattened. Chosen: five frames of a lift of a second. */
const AROUND_SHARE = 0.09;
/** Fewer frames than this make no curve. */
const LEAST_FRAMES = 4;

/**
 * How high a movement went, told by a parabola through the measured angles around its peak, weighing alike: the highest of noisy values is too high.
 * Lag: none, the parabola is read at the peak's own time. A top that is flat for the time looked at keeps its height; a peak as round as a sine's is lowered by less than a hundredth.
 * @param turned angles that rise in the exercise's direction
 * @returns null when too few frames were measured there
 */
export function fittedPeak(
  turned: readonly RawAngle[],
  { startMs, peakMs, endMs }: { readonly startMs: number; readonly peakMs: number; readonly endMs: number },
): number | null {
  const reachMs = AROUND_SHARE * (endMs - startMs);
  const near = turned.flatMap(({ tMs, measured }) =>
    measured && Math.abs(tMs - peakMs) <= reachMs ? [{ t: (tMs - peakMs) / reachMs, deg: measured.deg }] : [],
  );
  if (near.length < LEAST_FRAMES) return null;
  // Normal equations of deg = a + b t + c t^2; only a is wanted. Cramer's rule.
  const sum = (of: (p: { readonly t: number; readonly deg: number }) => number) => near.reduce((s, p) => s + of(p), 0);
  const n = near.length;
  const [t1, t2, t3, t4] = [sum((p) => p.t), sum((p) => p.t ** 2), sum((p) => p.t ** 3), sum((p) => p.t ** 4)];
  const [y0, y1, y2] = [sum((p) => p.deg), sum((p) => p.deg * p.t), sum((p) => p.deg * p.t ** 2)];
  const whole = n * (t2 * t4 - t3 * t3) - t1 * (t1 * t4 - t3 * t2) + t2 * (t1 * t3 - t2 * t2);
  if (Math.abs(whole) < 1e-9) return null;
  return (y0 * (t2 * t4 - t3 * t3) - t1 * (y1 * t4 - t3 * y2) + t2 * (y1 * t3 - t2 * y2)) / whole;
}
