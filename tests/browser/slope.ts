/** How fast something grows: the slope of the straight line of least squares, and half the width of its 95 % interval. */
export interface Slope {
  readonly perMinute: number;
  readonly within: number;
}

/** Two-sided 95 % quantiles of Student's t for 1 to 10 degrees of freedom; above, Cornish-Fisher's first term is right to 0.01. */
const T = [12.71, 4.3, 3.18, 2.78, 2.57, 2.45, 2.36, 2.31, 2.26, 2.23] as const;
const quantile = (freedom: number): number => T[freedom - 1] ?? 1.96 + 2.4 / freedom;

/** @param points minutes and values, at least three, at different times */
export function slopeOf(points: readonly (readonly [minutes: number, value: number])[]): Slope {
  if (points.length < 3) throw new Error(`slopeOf requires at least three points, got ${points.length}`);
  const mean = (values: readonly number[]) => values.reduce((sum, x) => sum + x, 0) / values.length;
  const mx = mean(points.map(([x]) => x));
  const my = mean(points.map(([, y]) => y));
  const sxx = points.reduce((sum, [x]) => sum + (x - mx) ** 2, 0);
  const perMinute = points.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0) / sxx;
  const left = points.reduce((sum, [x, y]) => sum + (y - my - perMinute * (x - mx)) ** 2, 0);
  return { perMinute, within: quantile(points.length - 2) * Math.sqrt(left / (points.length - 2) / sxx) };
}
