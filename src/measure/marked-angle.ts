import { median } from '../signal/median.ts';
import { type Deg, deg, type Ms } from '../units.ts';
import { restLevel } from './rest-level.ts';
import type { SetResult } from './set-result.ts';

/** The angle is the middle one of so long before and after the mark, ms. Chosen: a leg that is held moves little in it, noise of single pictures falls out. */
const AROUND_MS = 100;

/** An angle that somebody marked. */
export interface MarkedAngle {
  /** From the joint's rest in this recording, in the direction of the movement. */
  readonly fromRestDeg: Deg;
  /** The joint's own angle, as docs/angles.md defines it. */
  readonly angleDeg: Deg;
}

/**
 * The angle at a moment of a measured set, from its smoothed curve.
 * @param sign 1 when the exercise's angle rises, -1 when it falls
 * @returns null when the joint was not measured about then
 */
export function markedAngle({ tMs, angleDeg }: SetResult['curve'], atMs: Ms, sign: 1 | -1): MarkedAngle | null {
  const near = angleDeg.filter((angle, i): angle is Deg => angle !== null && Math.abs((tMs[i] as number) - atMs) <= AROUND_MS);
  const at = median(near);
  const rest = restLevel(angleDeg, sign);
  return at === null || rest === null ? null : { fromRestDeg: deg(sign * (at - rest)), angleDeg: deg(at) };
}
