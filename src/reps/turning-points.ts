/** A place where a series turns. */
export interface TurningPoint {
  readonly index: number;
  readonly value: number;
  readonly kind: 'peak' | 'valley';
}

/**
 * Alternating valleys and peaks of a series, leaving out reversals smaller than `reversal` (the "zigzag" of time series; the same idea as a
 * two-threshold hysteresis, relative to the last extreme). The last point is the extreme of the open end.
 * @param values finite, in order
 * @param reversal same unit, > 0
 */
export function turningPoints(values: readonly number[], reversal: number): readonly TurningPoint[] {
  const points: TurningPoint[] = [];
  let low = 0;
  let high = 0;
  let going: 'up' | 'down' | null = null;
  values.forEach((value, i) => {
    if (value > (values[high] as number)) high = i;
    if (value < (values[low] as number)) low = i;
    if (going !== 'down' && value <= (values[high] as number) - reversal) {
      points.push({ index: high, value: values[high] as number, kind: 'peak' });
      going = 'down';
      low = i;
    } else if (going !== 'up' && value >= (values[low] as number) + reversal) {
      points.push({ index: low, value: values[low] as number, kind: 'valley' });
      going = 'up';
      high = i;
    }
  });
  if (going === 'up') points.push({ index: high, value: values[high] as number, kind: 'peak' });
  if (going === 'down') points.push({ index: low, value: values[low] as number, kind: 'valley' });
  return points;
}
