import { type Deg, deg, degOfRad, wrapped } from '../units.ts';
import type { Spot } from './rgba-picture.ts';

/** A point with the standard error of its place, each way, px. */
export interface MeasuredSpot {
  readonly at: Spot;
  readonly errorPx: number;
}

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
