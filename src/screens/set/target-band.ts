import type { LegAngle } from '../../angles/joint-angle.ts';
import type { LegDrawing, PicturePoint } from '../../measure/live-view.ts';
import type { Posture } from '../../pose/head-up.ts';
import { type Deg, deg, type Px, px, radOfDeg } from '../../units.ts';

/** A piece of the circle about a joint, on which the moving end of a segment travels or beyond it, in the upright picture. */
export interface TargetBand {
  readonly centre: PicturePoint;
  /** Where the moving end is now. */
  readonly end: PicturePoint;
  readonly radius: Px;
  /** Clockwise from the picture's x axis, rad; `toRad` may be the smaller one. */
  readonly fromRad: number;
  readonly toRad: number;
  /** Whether the moving end is in it now. */
  readonly reached: boolean;
}

/** What the band is drawn from: the live angle now, and between which angles it is to come. */
export interface BandAngles {
  readonly nowDeg: Deg;
  readonly fromDeg: Deg;
  readonly toDeg: Deg;
}

/** A foot is short in the picture: its band lies further out, where it is not under the foot itself. Chosen. */
const BEYOND_FOOT = 2.2;

/** About which joint what end moves, and which way a rising angle turns it where toes or feet point to the left. */
const MOVING: Readonly<
  Record<LegAngle, { readonly about: keyof LegDrawing; readonly end: keyof LegDrawing; readonly turn: 1 | -1 }>
> = {
  'ankle-dorsiflexion': { about: 'ankle', end: 'toe', turn: 1 },
  'foot-elevation': { about: 'heel', end: 'toe', turn: 1 },
  'leg-elevation': { about: 'hip', end: 'ankle', turn: 1 },
  'knee-flexion': { about: 'knee', end: 'ankle', turn: -1 },
};

/** Where the moving end is to come, given where it is: turned about its joint by as much as the angle still lacks. See `angles/joint-angle.ts`. */
export function targetBand(
  leg: LegDrawing,
  { angle, posture }: { readonly angle: LegAngle; readonly posture: Posture },
  { nowDeg, fromDeg, toDeg }: BandAngles,
): TargetBand {
  const { about, end, turn } = MOVING[angle];
  const centre = leg[about];
  const [dx, dy] = [leg[end].x - centre.x, leg[end].y - centre.y];
  const feetLeft = posture === 'lying' ? leg.ankle.x < leg.hip.x : leg.toe.x < leg.heel.x;
  const at = (target: Deg) => Math.atan2(dy, dx) + radOfDeg(deg((target - nowDeg) * turn * (feetLeft ? 1 : -1)));
  const [low, high] = fromDeg < toDeg ? [fromDeg, toDeg] : [toDeg, fromDeg];
  return {
    centre,
    end: leg[end],
    radius: px(Math.hypot(dx, dy) * (end === 'toe' ? BEYOND_FOOT : 1)),
    fromRad: at(fromDeg),
    toRad: at(toDeg),
    reached: nowDeg >= low && nowDeg <= high,
  };
}
