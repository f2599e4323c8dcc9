import type { RepRule } from '../reps/rep-rule.ts';
import type { Ms } from '../units.ts';

/** In the right posture for this long without ever holding still: a recording cut tight, in which movements count from its start. Chosen. */
const NEVER_STILL_MS = 3000;
/** The same for a set that was found ready later on: sitting down and placing the foot comes first. Chosen: twice what it took on a clip of that. */
const SETTLING_MS = 7000;

/**
 * Index of the sample from which movements count: where the set was found ready while it ran, or, when it never was (the view was never good),
 * where the angle has held still for `readyMs` for the first time; the first measured one when the person moves in the right posture from the
 * start (a recording cut tight); null when nothing was measured.
 * @param tMs,angleDeg one a sample, same length; null where not measured, which breaks stillness
 * @param foundReadyMs when the set was found ready; null: never
 */
export function readyIndex(
  tMs: readonly number[],
  angleDeg: readonly (number | null)[],
  { readyMs, stillDeg }: Pick<RepRule, 'readyMs' | 'stillDeg'>,
  foundReadyMs: Ms | null,
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
    if (foundReadyMs === null ? since(stillFrom) >= readyMs : (tMs[i] as number) >= foundReadyMs) return i;
    if (since(measuredFrom) >= (foundReadyMs === null ? NEVER_STILL_MS : SETTLING_MS)) return measuredFrom;
  }
  const first = angleDeg.findIndex((v) => v !== null);
  return first < 0 ? null : first;
}

/**
 * A rest is left where two frames are further apart than this share of what stillness allows: there the picture's motion has taken over from the points, whose level is another.
 * Chosen: the start of a lift is slower.
 */
const STEP_SHARE = 0.33;

/**
 * Index of the first sample of the rest that ends where movements begin to count: nobody needs to wait until a set has been found ready, and a lift that is under way
 * by then begins from this rest.
 * @param ready index where movements begin to count
 * @returns at most `readyMs` before `ready`; `ready` itself where it was not still, or not measured, before that
 */
export function restBeforeReady(
  tMs: readonly number[],
  angleDeg: readonly (number | null)[],
  { readyMs, stillDeg }: Pick<RepRule, 'readyMs' | 'stillDeg'>,
  ready: number,
): number {
  let from = ready;
  while (
    from > 0 &&
    (angleDeg[from - 1] ?? null) !== null &&
    Math.abs((angleDeg[from - 1] as number) - (angleDeg[from] as number)) <= STEP_SHARE * stillDeg &&
    (tMs[ready] as number) - (tMs[from - 1] as number) <= readyMs &&
    spread(angleDeg, from - 1, ready) <= stillDeg
  )
    from--;
  return from;
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
