import { type Landmark, landmark, type Side } from '../pose/landmarks.ts';
import { type Deg, deg } from '../units.ts';
import type { Segment } from './leg-motion.ts';

/** A point of the picture, px. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A thick line: all points within `radius` px of the stretch from `a` to `b`. */
export interface Capsule {
  readonly a: Point;
  readonly b: Point;
  readonly radius: number;
}

/** Where a segment lies in a picture, guessed from landmarks. */
export interface SegmentShape {
  /** The ends of its axis, the one nearer the hip (or the heel) first. */
  readonly from: Point;
  readonly to: Point;
  /** The joint nearer the hip, about which it turns: hip, knee or ankle. */
  readonly joint: Point;
  /** What to match by, inside of the union: the first is tried first and keeps well inside the body, the last takes in its edges as well. */
  readonly outlines: readonly (readonly Capsule[])[];
  /** How far the landmarks' turn may stay from the picture's. */
  readonly trustDeg: Deg;
  /** Whether the outlines take in ground beside the segment, from which it moves away. */
  readonly groundBeside: boolean;
  /** A new anchor is made where the nearest one is further away than this. */
  readonly anchorSpacingDeg: Deg;
}

/** Landmarks see thigh and shank turn within 2 degrees most of the time and within 10 while confused, but a foot by 0.3 to 0.8 of its turn. Chosen above. */
const LIMB_TRUST_DEG = deg(25);
const FOOT_TRUST_DEG = deg(40);

/** Chosen by measurement on clips with truth: ankles 0.57 instead of 0.50 degrees of mean error with 12, knees 1.2 instead of 0.9 with 18 or 9. */
const LIMB_ANCHORS_DEG = deg(12);
const FOOT_ANCHORS_DEG = deg(18);

/**
 * Half widths, shares of the axis. The narrow ones hold cloth and skin only: ground beside a limb stays behind when the limb moves and drags the match
 * along. The wide ones reach over the edges, which is all there is to see of dark plain trousers. Chosen by measurement on clips with truth: a fifth
 * more or less changes the mean error by 0.1 degrees; without the wide ones dark trousers are lost.
 */
const SHANK_RADII = [0.1, 0.19];
const THIGH_RADII = [0.15, 0.22];
/** The thigh near the hip moves with the trunk's flesh: its turn comes out 4 % short with a start at a quarter, 1 % at 0.45. Measured. */
const THIGH_STRETCH = [0.45, 0.9] as const;
const SHANK_STRETCH = [0.12, 0.85] as const;

const between = (a: Point, b: Point, share: number): Point => ({ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share });

/** Length of a segment's axis, px. */
export const shapeLength = (shape: SegmentShape): number => Math.hypot(shape.to.x - shape.from.x, shape.to.y - shape.from.y);

/** Direction of a segment's axis, radians, x right and y down: positive is clockwise on the screen. */
export const shapeDirection = (shape: SegmentShape): number => Math.atan2(shape.to.y - shape.from.y, shape.to.x - shape.from.x);

/** The near leg's segment as the landmarks see it. Outlines keep away from the joints, where flesh and cloth of the neighbour move along. */
export function segmentShape(segment: Segment, landmarks: readonly Landmark[], side: Side): SegmentShape {
  const at = (name: 'Hip' | 'Knee' | 'Ankle' | 'Heel' | 'Toe'): Point => landmark(landmarks, `${side}${name}`);
  switch (segment) {
    case 'foot':
      return footShape(at('Heel'), at('Toe'), at('Ankle'));
    case 'shank':
      return limbShape(at('Knee'), at('Ankle'), SHANK_STRETCH, SHANK_RADII);
    case 'thigh':
      return limbShape(at('Hip'), at('Knee'), THIGH_STRETCH, THIGH_RADII);
    default:
      return segment satisfies never;
  }
}

function limbShape(from: Point, to: Point, stretch: readonly [number, number], radii: readonly number[]): SegmentShape {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const [a, b] = [between(from, to, stretch[0]), between(from, to, stretch[1])];
  const outlines = radii.map((r) => [{ a, b, radius: r * length }]);
  return { from, to, joint: from, outlines, trustDeg: LIMB_TRUST_DEG, groundBeside: true, anchorSpacingDeg: LIMB_ANCHORS_DEG };
}

/** A sole and an instep, from three landmarks. Chosen by looking at side views of bare and shod feet; a third more or less changes the turn by about 2 %. */
function footShape(from: Point, to: Point, ankle: Point): SegmentShape {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const instep = between(ankle, between(from, to, 0.3), 0.35);
  const outline = [
    { a: between(from, to, 0.02), b: to, radius: 0.17 * length },
    { a: between(from, to, 0.15), b: instep, radius: 0.15 * length },
  ];
  return {
    from,
    to,
    joint: ankle,
    outlines: [outline],
    trustDeg: FOOT_TRUST_DEG,
    groundBeside: false,
    anchorSpacingDeg: FOOT_ANCHORS_DEG,
  };
}

/** The outline that reaches furthest. */
export const outermost = (shape: SegmentShape): readonly Capsule[] =>
  shape.outlines[shape.outlines.length - 1] as readonly Capsule[];
