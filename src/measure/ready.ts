import type { RepRule } from '../reps/rep-rule.ts';

/**
 * Index of the sample from which movements count: the first at which the angle has held still for `readyMs`; the first measured one when it never
 * does (a recording cut tight); null when nothing was measured.
 * @param tMs,angleDeg one a sample, same length; null where not measured, which breaks stillness
 */
export function readyIndex(
  tMs: readonly number[],
  angleDeg: readonly (number | null)[],
  { readyMs, stillDeg }: Pick<RepRule, 'readyMs' | 'stillDeg'>,
): number | null {
  let from = 0;
  for (let i = 0; i < tMs.length; i++) {
    const value = angleDeg[i] ?? null;
    if (value === null) {
      from = i + 1;
      continue;
    }
    while (from < i && spread(angleDeg, from, i) > stillDeg) from++;
    if ((tMs[i] as number) - (tMs[from] as number) >= readyMs) return from;
  }
  const first = angleDeg.findIndex((v) => v !== null);
  return first < 0 ? null : first;
}

function spread(values: readonly (number | null)[], from: number, to: number): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = from; i <= to; i++) {
    const v = values[i];
    if (v == null) continue;
    low = Math.min(low, v);
    high = Math.max(high, v);
  }
  return high - low;
}
