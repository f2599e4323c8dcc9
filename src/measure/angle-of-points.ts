import { type Facing, jointAngle, type LegAngle } from '../angles/joint-angle.ts';
import type { PictureSize } from '../capture/frame.ts';
import { type Deg, deg, px, radOfDeg } from '../units.ts';
import { legLines } from './leg-sample.ts';
import type { LegDrawing } from './live-view.ts';
import { slopeOfTurn } from './lying-turn.ts';
import { TURN_SE_DEG, UNKNOWN_TURN_DEG } from './uncertainty.ts';

export type PointName = keyof LegDrawing;

/** The points that make each angle, in the order in which they lie along the leg. A raised leg's knee tells only whether it is straight. */
export const POINTS_OF = {
  'leg-elevation': ['hip', 'knee', 'ankle'],
  'knee-flexion': ['hip', 'knee', 'ankle'],
  'ankle-dorsiflexion': ['knee', 'ankle', 'heel', 'toe'],
  'foot-elevation': ['heel', 'toe'],
} as const satisfies Readonly<Record<LegAngle, readonly PointName[]>>;

/**
 * How far a point that a careful hand set lies from the joint's centre, each way: standard deviation as a share of the picture's longer side, 3.2 px of 640.
 * Chosen: a leg is about 200 px long there, so that this is 1.5 cm; the centre itself is not seen through skin and clothes.
 */
const PLACED_SHARE = 0.005;

/**
 * What an angle from the model's points in one picture is out by, against the joints' true angle: standard deviation, deg. From frame by frame errors on rendered
 * clips, rounded up: leg raise 3.2, knee 4.1, ankle 3.2 and 3.4 but 6 in docs/angles.md; nothing is known of the foot alone, taken for as bad as the ankle.
 */
const MODEL_POINTS_DEG: Readonly<Record<LegAngle, number>> = {
  'leg-elevation': 3.5,
  'knee-flexion': 4.5,
  'ankle-dorsiflexion': 6,
  'foot-elevation': 6,
};

/** Two-sided 95 % of a normal distribution. */
const Z95 = 1.96;

/** Where the points came from: the pose model, or a hand. */
export type PointsFrom = 'landmarks' | 'corrected';

/** What is known of one picture besides the points. */
export interface PointsView {
  readonly angle: LegAngle;
  readonly facing: Facing;
  readonly size: PictureSize;
  /** How far the camera is turned; null: not known. */
  readonly turnDeg: Deg | null;
}

/** An angle read from the points of one picture: the joint's own angle as docs/angles.md defines it, a leg's elevation from the picture's horizontal. */
export interface PointsAngle {
  readonly angleDeg: Deg;
  /** Half the width of the 95 % interval. */
  readonly errorDeg: Deg;
}

/** The angle that these points make, with its error: of placing them, or of the model, and of the view. */
export function angleOfPoints(leg: LegDrawing, from: PointsFrom, view: PointsView): PointsAngle {
  const { angle, facing } = view;
  const angleDeg = jointAngle(angle, legLines(leg), facing);
  const points = from === 'corrected' ? placedError(leg, view) : MODEL_POINTS_DEG[angle];
  return { angleDeg, errorDeg: deg(Z95 * Math.hypot(points, viewShift(leg, view))) };
}

/** The smaller of the two ways round between two angles, deg. */
const apart = (a: number, b: number): number => Math.min(Math.abs(a - b), 360 - Math.abs(a - b));

/**
 * What the camera's turn may do to the angle, deg: nothing is taken out of a single picture. The points as a camera square on would have seen them, for the
 * turn as far as it is known: what lies across shorter by the cosine, and a lying person on a slope.
 */
function viewShift(leg: LegDrawing, { angle, facing, turnDeg }: PointsView): number {
  const off = turnDeg === null ? UNKNOWN_TURN_DEG : TURN_SE_DEG;
  const seenDeg = jointAngle(angle, legLines(leg), facing);
  const feet = facing === 'left' ? -1 : 1;
  const shifts = [-off, off].map((by) => {
    const turn = deg((turnDeg ?? 0) + by);
    const slope = angle === 'leg-elevation' ? Math.tan(radOfDeg(slopeOfTurn(turn))) : 0;
    const across = Math.cos(radOfDeg(turn));
    const square = ({ x, y }: LegDrawing[PointName]) => ({ x: px(x / across), y: px(y + feet * x * slope) });
    const { hip, knee, ankle, heel, toe } = leg;
    const squared = { hip: square(hip), knee: square(knee), ankle: square(ankle), heel: square(heel), toe: square(toe) };
    return apart(jointAngle(angle, legLines(squared), facing), seenDeg);
  });
  return Math.max(...shifts);
}

/** What misplaced points do to the angle, deg: how much a step of each point each way changes it, times how far the point may be off. */
function placedError(leg: LegDrawing, { angle, facing, size }: PointsView): number {
  const offPx = PLACED_SHARE * Math.max(size.width, size.height);
  const at = (moved: LegDrawing): number => jointAngle(angle, legLines(moved), facing);
  const here = at(leg);
  const changes = POINTS_OF[angle].flatMap((name) => {
    const { x, y } = leg[name];
    const there = [
      { x: px(x + 1), y },
      { x, y: px(y + 1) },
    ];
    return there.map((point) => apart(at({ ...leg, [name]: point }), here));
  });
  return offPx * Math.hypot(...changes);
}

/** Knee flexion by the same points: how straight a raised leg is. */
export const kneeOfPoints = (leg: LegDrawing, facing: Facing): Deg => jointAngle('knee-flexion', legLines(leg), facing);
