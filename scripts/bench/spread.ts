import { quantile } from 'simple-statistics';

/** Where many timings of the same thing lie. Timings have a long upper tail, hence no mean. */
export interface Spread {
  readonly n: number;
  readonly median: number;
  readonly lowerQuartile: number;
  readonly upperQuartile: number;
  readonly p95: number;
}

/** @param values at least one */
export function spreadOf(values: Iterable<number>): Spread {
  const all = [...values];
  if (all.length === 0) throw new Error('spreadOf requires at least one value, got none');
  const [lowerQuartile, median, upperQuartile, p95] = quantile(all, [0.25, 0.5, 0.75, 0.95]) as [number, number, number, number];
  return { n: all.length, median, lowerQuartile, upperQuartile, p95 };
}

/** As `1.07, middle half 1.05 to 1.09, n = 29`. */
export function spreadWords({ n, median, lowerQuartile, upperQuartile }: Spread, places: number, unit = ''): string {
  const [middle, low, high] = [median, lowerQuartile, upperQuartile].map((x) => x.toFixed(places));
  return `${middle}${unit}, middle half ${low} to ${high}, n = ${n}`;
}
