import type { RepRule } from '../reps/rep-rule.ts';

/** In the right posture for this long without ever holding still: a recording cut tight, in which movements count from its start. Chosen. */
const NEVER_STILL_MS = 3000;

/**
 * Index of the sample from which movements count: where the angle has held still for `readyMs` for the first time; the first measured one when the
 * person moves in the right posture from the start (a recording cut tight); null when nothing was measured.
 * @param tMs,angleDeg one a sample, same length; null where not measured, which breaks stillness
 */
export function readyIndex(
  tMs: readonly number[],
  angleDeg: readonly (number | null)[],
  { readyMs, stillDeg }: Pick<RepRule, 'readyMs' | 'stillDeg'>,
): number | null {
  let measuredFrom = 0;
  let stillFrom = 0;
  for (let i = 0; i < tMs.length; i++) {
    if ((angleDeg[i] ?? null) === null) {
      measuredFrom = i + 1;
      stillFrom = i + 1;
      continue;
    }
    const since = (from: number): number => (tMs[i] as number) - (tMs[from] as number);
    while (stillFrom < i && spread(angleDeg, stillFrom, i) > stillDeg) stillFrom++;
    if (since(stillFrom) >= readyMs) return i;
    if (since(measuredFrom) >= NEVER_STILL_MS) return measuredFrom;
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
