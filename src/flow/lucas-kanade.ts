import { PointFollower, type PointSearch } from './lucas-kanade-point.ts';
import type { Pyramid } from './pyramid.ts';

/** What became of a point: 1 when it was followed, otherwise why not. */
export const TRACKED = 1;
/** Its own neighbourhood has no corner: the smaller eigenvalue is under `minEigenvalue`. */
export const FLAT = 2;
/** It left the picture, or started outside. */
export const OUTSIDE = 3;

const STATUS = { tracked: TRACKED, flat: FLAT, outside: OUTSIDE } as const;

export interface LucasKanadeOptions {
  /** Side of the square window, px of each level, odd. */
  readonly windowPx: number;
  /** Pyramid levels used, the full picture included. */
  readonly levels: number;
  /** Most iterations a level. */
  readonly iterations: number;
  /** A level is done when a step is at most this long, px of that level. */
  readonly epsilonPx: number;
  /** Least smaller eigenvalue of the mean gradient matrix of the window, (grey levels per px)^2. */
  readonly minEigenvalue: number;
  /** Brings the second window to the first one's mean and contrast before they are compared, for light that changes; otherwise grey levels must stay. */
  readonly matchLight: boolean;
}

/**
 * 15 px windows, 3 levels, 10 steps of at least 0.03 px: chosen. 60 points gave the same turn within 0.0001 degrees with 20 steps of 0.01 px, and
 * 11 px windows halve the time at a quarter more noise; see tests/bench/flow.bench.ts.
 * Eigenvalue 0.1 (grey levels per px)^2: a window whose best-hidden direction has slopes of 0.3 grey levels per px, under the noise of a webcam. Chosen.
 */
export const LUCAS_KANADE_DEFAULTS: LucasKanadeOptions = {
  windowPx: 15,
  levels: 3,
  iterations: 10,
  epsilonPx: 0.03,
  minEigenvalue: 0.1,
  matchLight: true,
};

/** Followed points; index i belongs to input point i. */
export interface TrackedPoints {
  /** x, y pairs, frame px. A point that was not followed keeps its last estimate: never NaN, but ask `status` first. */
  readonly positions: Float32Array;
  /** TRACKED, FLAT or OUTSIDE. */
  readonly status: Uint8Array;
  /** Mean absolute grey difference of the two windows, grey levels of the first picture; 0 for a point that was not followed. */
  readonly residual: Float32Array;
}

export interface PointsTrackedBothWays extends TrackedPoints {
  /** Distance between a point and where following it forward and back again ends, px; Infinity when either way failed. */
  readonly closurePx: Float32Array;
}

/**
 * Follows points from one picture to the next: pyramidal Lucas-Kanade, translation of a square window.
 * Bouguet 2000, "Pyramidal implementation of the Lucas Kanade feature tracker", Intel; Lucas & Kanade 1981, IJCAI.
 * Windows do not turn with the picture: on dense texture a turn of 4 degrees between the pictures comes out within
 * 0.1 degrees and one of 9 within 0.2; on a dozen blobs 0.2 and 0.6.
 * Both pictures may be crops of the same frame with different origins. Where a window hangs over the picture's edge the edge pixels are repeated.
 * @param points x, y pairs in `from`, frame px
 * @param guesses where the points are expected in `to`, frame px, same length; without them the search starts at the same place
 */
export function trackPoints(
  from: Pyramid,
  to: Pyramid,
  points: Float32Array,
  options: Partial<LucasKanadeOptions> = {},
  guesses: Float32Array = points,
): TrackedPoints {
  const settings = { ...LUCAS_KANADE_DEFAULTS, ...options };
  if (settings.windowPx % 2 !== 1) throw new Error(`trackPoints requires an odd windowPx, got ${settings.windowPx}`);
  if (guesses.length !== points.length) {
    throw new Error(`trackPoints requires one guess a point, got ${guesses.length / 2} for ${points.length / 2}`);
  }
  const count = points.length >> 1;
  const tracked = { positions: new Float32Array(2 * count), status: new Uint8Array(count), residual: new Float32Array(count) };
  const follower = new PointFollower(settings);
  const found: PointSearch = { x: 0, y: 0, residual: 0, state: 'outside' };
  for (let i = 0; i < count; i++) {
    const x = (points[2 * i] as number) - from.originX;
    const y = (points[2 * i + 1] as number) - from.originY;
    found.x = (guesses[2 * i] as number) - to.originX;
    found.y = (guesses[2 * i + 1] as number) - to.originY;
    follower.follow(from, to, x, y, found);
    tracked.positions[2 * i] = found.x + to.originX;
    tracked.positions[2 * i + 1] = found.y + to.originY;
    tracked.status[i] = STATUS[found.state];
    tracked.residual[i] = found.residual;
  }
  return tracked;
}

/**
 * Follows points to the next picture and back. A point followed wrongly seldom returns: `closurePx` over about half a pixel is not to be trusted.
 * Kalal, Mikolajczyk & Matas 2010, ICPR 2756. The way back starts from the forward position less the guessed shift, so the true place is no head start.
 */
export function trackBothWays(
  from: Pyramid,
  to: Pyramid,
  points: Float32Array,
  options: Partial<LucasKanadeOptions> = {},
  guesses: Float32Array = points,
): PointsTrackedBothWays {
  const there = trackPoints(from, to, points, options, guesses);
  const backGuesses = there.positions.map((v, i) => v - ((guesses[i] as number) - (points[i] as number)));
  const back = trackPoints(to, from, there.positions, options, backGuesses);
  const closurePx = new Float32Array(points.length >> 1);
  for (let i = 0; i < closurePx.length; i++) {
    const both = there.status[i] === TRACKED && back.status[i] === TRACKED;
    const dx = (back.positions[2 * i] as number) - (points[2 * i] as number);
    const dy = (back.positions[2 * i + 1] as number) - (points[2 * i + 1] as number);
    closurePx[i] = both ? Math.hypot(dx, dy) : Number.POSITIVE_INFINITY;
  }
  return { ...there, closurePx };
}
