import type { Facing, LegLines, SegmentLine } from '../../src/angles/joint-angle.ts';
import type { Side } from '../../src/pose/landmarks.ts';
import { deg } from '../../src/units.ts';
import type { Motion } from './bvh.ts';
import { angleBetween, cross, dot, minus, plus, times, unitOf, type Vector } from './vector.ts';

/** The recordings count in 1 / 0.45 inches. */
const METRES = 0.0254 / 0.45;
const CAMERA_AWAY_M = 3;
/** 1280 pixels across 60 degrees. */
const FOCAL_PX = 1108;
/** The camera stands still for so long, then again square to where the person faces. */
const WINDOW_MS = 1000;

/** One frame: the angles of the skeleton in space, and the leg's lines as a camera at the person's side sees them. */
export interface SideViewFrame {
  readonly inSpace: { readonly kneeDeg: number; readonly elevationDeg: number; readonly ankleDeg: number };
  readonly lines: LegLines;
  readonly facing: Facing;
  /** Between the pelvis and where the camera expects it, deg. */
  readonly turnDeg: number;
}

/** Standard normal values. */
export type Noise = () => number;

const NAMES = { left: 'Left', right: 'Right' } as const;
const UP: Vector = [0, 1, 0];

/** @param jitterPx standard deviation of each joint's place in the picture, in x and in y */
export function sideView({ frames, frameMs }: Motion, side: Side, jitterPx: number, noise: Noise): readonly SideViewFrame[] {
  const perWindow = Math.round(WINDOW_MS / frameMs);
  const place = (i: number, name: string): Vector => {
    const found = frames[i]?.get(name);
    if (!found) throw new Error(`sideView requires a joint ${name} in frame ${i}`);
    return found;
  };
  /** From the left hip to the right one, level. */
  const across = (i: number): Vector => {
    const [x, , z] = minus(place(i, 'RightUpLeg'), place(i, 'LeftUpLeg'));
    return unitOf([x, 0, z]);
  };
  return frames.map((_, i) => {
    const start = Math.floor(i / perWindow) * perWindow;
    const window = Array.from({ length: Math.min(perWindow, frames.length - start) }, (_, j) => start + j);
    const axis = unitOf(window.map(across).reduce(plus));
    const middle = times(window.map((j) => place(j, 'Hips')).reduce(plus), 1 / window.length);
    const leg = ['UpLeg', 'Leg', 'Foot', 'ToeBase'].map((joint) => place(i, NAMES[side] + joint)) as [
      Vector,
      Vector,
      Vector,
      Vector,
    ];
    const [hip, knee, ankle, toe] = leg;
    // The camera looks at the leg from outside: from the person's left for a left leg, so that the person faces left in its picture.
    const away = times(axis, side === 'right' ? 1 : -1);
    const eye = plus(middle, times(away, CAMERA_AWAY_M / METRES));
    const rightwards = cross(UP, away);
    const seen = leg.map((point) => {
      const ray = minus(point, eye);
      const scale = FOCAL_PX / -dot(ray, away);
      return [scale * dot(ray, rightwards) + jitterPx * noise(), -scale * dot(ray, UP) + jitterPx * noise()] as const;
    });
    const forward = cross(UP, across(i));
    return {
      inSpace: {
        kneeDeg: angleBetween(minus(knee, hip), minus(ankle, knee)),
        elevationDeg: (Math.atan2(dot(minus(ankle, hip), UP), dot(minus(ankle, hip), forward)) * 180) / Math.PI,
        ankleDeg: angleBetween(minus(ankle, knee), minus(toe, ankle)) - 90,
      },
      lines: { thigh: lineOf(seen[0], seen[1]), shank: lineOf(seen[1], seen[2]), foot: lineOf(seen[2], seen[3]) },
      facing: side === 'right' ? 'right' : 'left',
      turnDeg: angleBetween(axis, across(i)),
    };
  });
}

type Point = readonly [x: number, y: number] | undefined;
function lineOf(from: Point, to: Point): SegmentLine {
  if (!from || !to) throw new Error('lineOf requires two points');
  const [x, y] = [to[0] - from[0], to[1] - from[1]];
  return { directionDeg: deg((Math.atan2(y, x) * 180) / Math.PI), lengthPx: Math.hypot(x, y) };
}
