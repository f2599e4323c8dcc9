import { deg, px, radOfDeg, ratio } from '../units.ts';
import { movedPoint, type PlaneMotion } from './plane-motion.ts';
import type { Capsule, Point } from './segment-shape.ts';

/** Where a segment is: turned by `turnDeg` since its rest picture, grown by `scale`, the rest picture's centroid now at (x, y). */
export interface Place {
  readonly turnDeg: number;
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

/** A segment's move from one place to another. */
export interface Step {
  readonly from: Place;
  readonly to: Place;
}

/** Where a point that goes along with a segment ends when the segment makes a step. */
export function pointAfter(point: Point, { from, to }: Step): Point {
  const angle = radOfDeg(deg(to.turnDeg - from.turnDeg));
  const scale = to.scale / from.scale;
  const dx = point.x - from.x;
  const dy = point.y - from.y;
  return {
    x: to.x + scale * (Math.cos(angle) * dx - Math.sin(angle) * dy),
    y: to.y + scale * (Math.sin(angle) * dx + Math.cos(angle) * dy),
  };
}

/** The outline that goes along with a segment's step. */
export const outlineAfter = (outline: readonly Capsule[], step: Step): readonly Capsule[] =>
  outline.map(({ a, b, radius }) => ({
    a: pointAfter(a, step),
    b: pointAfter(b, step),
    radius: (radius * step.to.scale) / step.from.scale,
  }));

/** The motion of a picture part from one place to another, about its own centroid. */
export const motionBetween = (from: Place, to: Place): PlaneMotion => ({
  rotationDeg: deg(to.turnDeg - from.turnDeg),
  scale: ratio(to.scale / from.scale),
  pivotX: px(from.x),
  pivotY: px(from.y),
  shiftX: px(to.x - from.x),
  shiftY: px(to.y - from.y),
});

/** The place at which a motion that starts at a place ends. */
export function placeAfter(from: Place, motion: PlaneMotion): Place {
  const [x, y] = movedPoint(motion, from.x, from.y);
  return { turnDeg: from.turnDeg + motion.rotationDeg, scale: from.scale * motion.scale, x, y };
}
