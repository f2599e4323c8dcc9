import { median as medianOf, quantileSorted } from 'simple-statistics';

/** Median; null for an empty list. */
export const median = (values: readonly number[]): number | null => (values.length === 0 ? null : medianOf([...values]));

/** Quantile by linear interpolation of the sorted values (Hyndman & Fan 1996, type 7); null for an empty list. @param share in [0, 1] */
export function quantile(values: readonly number[], share: number): number | null {
  if (values.length === 0) return null;
  return quantileSorted(
    [...values].sort((a, b) => a - b),
    share,
  );
}
