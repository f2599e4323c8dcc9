import { median } from '../signal/median.ts';
import { firstAtLeast } from './first-at-least.ts';

/** Half of the time over which it is looked, ms. Chosen: points that jump for a frame or two are outvoted. */
const AROUND_MS = 200;

/** Each value as the median about its time, so that single jumps and holes do not show. @param tMs,values one a frame; null where not measured */
export function steadied(tMs: readonly number[], values: readonly (number | null)[]): readonly (number | null)[] {
  return tMs.map((t) => {
    const near: number[] = [];
    for (let i = firstAtLeast(tMs, t - AROUND_MS, (x) => x); (tMs[i] ?? Number.POSITIVE_INFINITY) <= t + AROUND_MS; i++) {
      const value = values[i] ?? null;
      if (value !== null) near.push(value);
    }
    return median(near);
  });
}
