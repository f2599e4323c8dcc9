/** How fast something grows: the slope of the straight line of least squares, and half the width of its 95 % interval. */
export interface Slope {
  readonly perMinute: number;
  readonly within: number;
}

type Point = readonly [minutes: number, value: number];

/** Two-sided 95 % quantiles of Student's t for 1 to 10 degrees of freedom; above, Cornish-Fisher's first term is right to 0.01. */
const T = [12.71, 4.3, 3.18, 2.78, 2.57, 2.45, 2.36, 2.31, 2.26, 2.23] as const;
const quantile = (freedom: number): number => T[freedom - 1] ?? 1.96 + 2.4 / freedom;

const mean = (values: readonly number[]) => values.reduce((sum, x) => sum + x, 0) / values.length;

/** The same points around their own middle, so that only how they change is left. */
function centred(points: readonly Point[]): readonly Point[] {
  const [mx, my] = [mean(points.map(([x]) => x)), mean(points.map(([, y]) => y))];
  return points.map(([x, y]) => [x - mx, y - my]);
}

/**
 * The one slope within several groups, each of which begins where it likes: parallel lines (analysis of covariance).
 * @param groups minutes and values at different times; with two points more than there are groups
 */
export function slopeWithin(groups: readonly (readonly Point[])[]): Slope {
  const used = groups.filter((points) => points.length > 0);
  const points = used.flatMap(centred);
  const freedom = points.length - used.length - 1;
  if (freedom < 1) throw new Error(`slopeWithin requires two points more than groups, got ${points.length} in ${used.length}`);
  const sxx = points.reduce((sum, [x]) => sum + x ** 2, 0);
  const perMinute = points.reduce((sum, [x, y]) => sum + x * y, 0) / sxx;
  const left = points.reduce((sum, [x, y]) => sum + (y - perMinute * x) ** 2, 0);
  return { perMinute, within: quantile(freedom) * Math.sqrt(left / freedom / sxx) };
}

/** @param points minutes and values, at least three, at different times */
export const slopeOf = (points: readonly Point[]): Slope => slopeWithin([points]);
