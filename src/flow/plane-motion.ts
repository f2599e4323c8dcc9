import { type Deg, deg, degOfRad, type Px, px, type Ratio, radOfDeg, ratio } from '../units.ts';

/**
 * A turn, a shift and a change of size of a picture part: x' = pivot + shift + scale * R * (x - pivot).
 * Image axes, x right and y down: a positive rotation goes from +x to +y, which on the screen is CLOCKWISE.
 * The pivot is a point of the part before the motion; `shift` is how far that point moved. Frame px.
 */
export interface PlaneMotion {
  readonly rotationDeg: Deg;
  readonly scale: Ratio;
  readonly pivotX: Px;
  readonly pivotY: Px;
  readonly shiftX: Px;
  readonly shiftY: Px;
}

/** No motion, about a given pivot (frame px). */
export const still = (pivotX: number, pivotY: number): PlaneMotion => ({
  rotationDeg: degOfRad(0),
  scale: ratio(1),
  pivotX: px(pivotX),
  pivotY: px(pivotY),
  shiftX: px(0),
  shiftY: px(0),
});

/** Where a point of the part lies after the motion, frame px. */
export function movedPoint(motion: PlaneMotion, x: number, y: number): readonly [number, number] {
  const angle = radOfDeg(motion.rotationDeg);
  const c = motion.scale * Math.cos(angle);
  const s = motion.scale * Math.sin(angle);
  const dx = x - motion.pivotX;
  const dy = y - motion.pivotY;
  return [motion.pivotX + motion.shiftX + c * dx - s * dy, motion.pivotY + motion.shiftY + s * dx + c * dy];
}

/** The same motion written about another pivot: rotation and scale stay, the shift is that of the new pivot. */
export function aboutPivot(motion: PlaneMotion, pivotX: number, pivotY: number): PlaneMotion {
  const [x, y] = movedPoint(motion, pivotX, pivotY);
  return { ...motion, pivotX: px(pivotX), pivotY: px(pivotY), shiftX: px(x - pivotX), shiftY: px(y - pivotY) };
}

/** One motion and then another, about the first one's pivot. */
export function composed(first: PlaneMotion, then: PlaneMotion): PlaneMotion {
  const { pivotX, pivotY } = first;
  const [x, y] = movedPoint(then, pivotX + first.shiftX, pivotY + first.shiftY);
  return {
    rotationDeg: deg(first.rotationDeg + then.rotationDeg),
    scale: ratio(first.scale * then.scale),
    pivotX,
    pivotY,
    shiftX: px(x - pivotX),
    shiftY: px(y - pivotY),
  };
}

/** The motion that takes back another. */
export const inverse = (m: PlaneMotion): PlaneMotion => ({
  rotationDeg: deg(-m.rotationDeg),
  scale: ratio(1 / m.scale),
  pivotX: px(m.pivotX + m.shiftX),
  pivotY: px(m.pivotY + m.shiftY),
  shiftX: px(-m.shiftX),
  shiftY: px(-m.shiftY),
});
