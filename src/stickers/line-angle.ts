import { type Deg, deg, degOfRad, wrapped } from '../units.ts';
import type { Spot } from './rgba-picture.ts';

/** A point with the standard error of its place, each way, px. */
export interface MeasuredSpot {
  readonly at: Spot;
  readonly errorPx: number;
}

/** Which way the toes point in the picture. */
export type Toes = 'left' | 'right';

/** Two-sided 95 % of a normal distribution. */
export const Z95 = 1.96;

/** How much the line through three points bends at the middle one. */
export interface Bend {
  /** From the first line's direction to the second one's, clockwise on the screen positive, in [-180, 180). */
  readonly bendDeg: Deg;
  /** Standard error, deg. */
  readonly seDeg: Deg;
}

/**
 * The bend at `middle` of the path from `first` to `last`, with what the errors of the three places do to it.
 * The middle's error counts for both lines, hence more than an end's.
 */
export function bendAt(first: MeasuredSpot, middle: MeasuredSpot, last: MeasuredSpot): Bend {
  const inX = middle.at.x - first.at.x;
  const inY = middle.at.y - first.at.y;
  const outX = last.at.x - middle.at.x;
  const outY = last.at.y - middle.at.y;
  const inSquare = Math.max(1, inX * inX + inY * inY);
  const outSquare = Math.max(1, outX * outX + outY * outY);
  // What a step of the middle, x and y, turns both lines by.
  const byX = inY / inSquare + outY / outSquare;
  const byY = inX / inSquare + outX / outSquare;
  const se = Math.hypot(
    first.errorPx / Math.sqrt(inSquare),
    last.errorPx / Math.sqrt(outSquare),
    middle.errorPx * Math.hypot(byX, byY),
  );
  return {
    bendDeg: deg(wrapped(degOfRad(Math.atan2(outY, outX) - Math.atan2(inY, inX)))),
    seDeg: degOfRad(se),
  };
}

/** An angle in the picture with half the width of its 95 % interval. */
export interface AngleWithError {
  readonly angleDeg: Deg;
  readonly errorDeg: Deg;
}

/**
 * How far a bend has gone from its rest, towards the top of the picture positive where the toes point to `toes`; in (-180, 180].
 * @param rest the bend at rest, the mean of `count` frames: noise falls with their number, what is the same in all of them does not
 */
export function fromRest(now: Bend, rest: RestBend, toes: Toes): AngleWithError {
  const turn = wrapped(now.bendDeg - rest.bendDeg);
  return {
    // Turning clockwise raises what points to the left and lowers what points to the right.
    angleDeg: deg(toes === 'left' ? turn : -turn),
    errorDeg: deg(Z95 * Math.hypot(now.seDeg, rest.seDeg)),
  };
}

/** A bend at rest. */
export interface RestBend extends Bend {
  readonly count: number;
}

/** Part of a centre's error that does not change from frame to frame (a sticker's edge hidden in the skin, video colour), as a share of its variance. Chosen: half. */
const LASTING_SHARE = 0.5;

/** The mean of bends while the toe rests; null for none. */
export function restBend(bends: readonly Bend[]): RestBend | null {
  const first = bends[0];
  if (!first) return null;
  const count = bends.length;
  const off = bends.reduce((sum, b) => sum + wrapped(b.bendDeg - first.bendDeg), 0) / count;
  const square = bends.reduce((sum, b) => sum + b.seDeg ** 2, 0) / count;
  const seDeg = deg(Math.sqrt(square * (LASTING_SHARE + (1 - LASTING_SHARE) / count)));
  return { bendDeg: deg(wrapped(first.bendDeg + off)), seDeg, count };
}

/** Which way the toes point: from the arch to the tip. */
export const toesPoint = (arch: Spot, tip: Spot): Toes => (tip.x < arch.x ? 'left' : 'right');
