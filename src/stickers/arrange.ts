import type { Side } from '../pose/landmarks.ts';
import { fail, ok, type Result } from '../result.ts';
import { distance, type Spot } from './rgba-picture.ts';

/** Three stickers of a foot by their places on it. */
export interface ToeOrder<T> {
  readonly tip: T;
  readonly knuckle: T;
  readonly arch: T;
}

/** Which way the toes point in the picture when the camera looks at the inner side of a foot that stands upright. */
export const toesSeenFromInside = (side: Side): 'left' | 'right' => (side === 'left' ? 'right' : 'left');

/** Three dots that cannot be the stickers of a foot: bent too much in the middle, or their distances too unlike. */
export type ArrangeRefusal = { readonly kind: 'not-as-on-a-foot'; readonly bendDeg: number; readonly ratio: number };

/** The line from arch to tip bends at the knuckle by at most this, deg: a great toe lifts by up to 80 to 90. Chosen. */
const MAX_BEND_DEG = 90;
/** The longer of the two distances is at most this many times the shorter one. Chosen. */
const MAX_RATIO = 5;
/** Nearer to alike than this, lengths do not tell which end is the toe. Chosen. */
const CLEAR_RATIO = 1.15;

/**
 * Which of three dots is which: the knuckle is the one where the line through all three bends least; the tip is the end nearer to it.
 * @param toes which way the toes point in the picture, where that is known: it decides over the lengths when these are alike
 */
export function arrange<T extends { readonly at: Spot }>(
  three: readonly [T, T, T],
  toes: 'left' | 'right' | null = null,
): Result<ToeOrder<T>, ArrangeRefusal> {
  const [a, b, c] = three;
  const orders: readonly [T, T, T][] = [
    [a, b, c],
    [b, a, c],
    [a, c, b],
  ];
  const bends = orders.map(([p, q, r]) => bendDeg(p.at, q.at, r.at));
  const bend = Math.min(...bends);
  const [p, knuckle, r] = orders[bends.indexOf(bend)] as [T, T, T];
  const toP = distance(p.at, knuckle.at);
  const toR = distance(r.at, knuckle.at);
  const ratio = Math.max(toP, toR) / Math.max(1e-9, Math.min(toP, toR));
  if (!(bend <= MAX_BEND_DEG && ratio <= MAX_RATIO)) return fail({ kind: 'not-as-on-a-foot', bendDeg: bend, ratio });
  const tipIsP = toes !== null && ratio < CLEAR_RATIO ? (toes === 'left') === p.at.x < r.at.x : toP < toR;
  return ok(tipIsP ? { tip: p, knuckle, arch: r } : { tip: r, knuckle, arch: p });
}

/** How much a path from p over q to r bends at q, deg in [0, 180]. */
function bendDeg(p: Spot, q: Spot, r: Spot): number {
  const inX = q.x - p.x;
  const inY = q.y - p.y;
  const outX = r.x - q.x;
  const outY = r.y - q.y;
  return (Math.abs(Math.atan2(inX * outY - inY * outX, inX * outX + inY * outY)) * 180) / Math.PI;
}
