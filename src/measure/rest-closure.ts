import type { Movement } from '../reps/movement.ts';
import { median } from '../signal/median.ts';
import type { AngleInFrame } from './angle-series.ts';
import { firstAtLeast } from './first-at-least.ts';

/** Rest is looked at from this long before and after a movement, up to that long, ms. Chosen: what a foot still sways after coming down. */
const NEAR_MS = 100;
const FAR_MS = 400;
/** Fewer frames of rest on a side tell nothing. Chosen. */
const LEAST_FRAMES = 3;

/**
 * How far the angle after a movement is from the one before, deg, and the landmarks do not confirm it: a leg that came to lie elsewhere moved them as well,
 * a match that slipped did not. Their own noise is no reason for doubt: the smaller of both differences counts.
 * @param movements all of the set in order of time, so that no other one is taken for rest
 * @param tMs,frames one a frame, in order of time
 * @returns null when there is no rest on both sides
 */
export function restClosure(
  movement: Movement,
  movements: readonly Movement[],
  tMs: readonly number[],
  frames: readonly (AngleInFrame | null)[],
): number | null {
  const at = movements.indexOf(movement);
  const earliest = Math.max(movement.startMs - FAR_MS, movements[at - 1]?.endMs ?? Number.NEGATIVE_INFINITY);
  const latest = Math.min(movement.endMs + FAR_MS, movements[at + 1]?.startMs ?? Number.POSITIVE_INFINITY);
  const within = (fromMs: number, toMs: number): readonly AngleInFrame[] => {
    const found: AngleInFrame[] = [];
    for (let i = firstAtLeast(tMs, fromMs, (t) => t); (tMs[i] ?? Number.POSITIVE_INFINITY) <= toMs; i++) {
      const frame = frames[i];
      if (frame) found.push(frame);
    }
    return found;
  };
  const before = within(earliest, movement.startMs - NEAR_MS);
  const after = within(movement.endMs + NEAR_MS, latest);
  if (Math.min(before.length, after.length) < LEAST_FRAMES) return null;
  const change = (pick: (f: AngleInFrame) => number | null): number | null => {
    const [from, to] = [before, after].map((part) => median(part.flatMap((f) => pick(f) ?? [])));
    return from == null || to == null ? null : Math.abs(to - from);
  };
  const measured = change((f) => f.deg) ?? 0;
  const unconfirmed = change((f) => (f.landmarkDeg === null ? null : f.deg - f.landmarkDeg));
  return Math.min(measured, unconfirmed ?? measured);
}
