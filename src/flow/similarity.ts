import { fail, ok, type Result } from '../result.ts';
import { type Deg, degOfRad, type Px, px, ratio } from '../units.ts';
import type { PlaneMotion } from './plane-motion.ts';

export type SimilarityError =
  | { readonly kind: 'too-few-points'; readonly count: number; readonly needed: number }
  /** The points lie so close together that they carry no turn. */
  | { readonly kind: 'degenerate'; readonly spreadPx: Px; readonly neededPx: Px };

export interface SimilarityFit {
  /** About the weighted centroid of the points before the motion. */
  readonly motion: PlaneMotion;
  /** Root of the weighted mean squared distance between moved and seen points. */
  readonly rmsPx: Px;
  /** Standard error of the rotation, were the point errors independent; Infinity when the fit leaves no spare point to tell. */
  readonly rotationSeDeg: Deg;
}

/** Fewest points for a fit; two determine it exactly. */
export const MIN_POINTS = 2;
/** Least root mean square distance of the points from their centroid, px. Chosen: 0.1 px noise then turns two points by 4 degrees. */
export const MIN_SPREAD_PX = 2;

/**
 * The rigid motion or similarity that takes one point set onto another with the least weighted squared distance, in closed form
 * (Umeyama 1991, IEEE PAMI 13:376, in two dimensions). Rotation: positive is clockwise on the screen, see PlaneMotion.
 * @param from,to x, y pairs, px, same length, pair i matched with pair i
 * @param options.weights one per point, at least 0, a point of weight 0 is ignored (and may be NaN); options.allowScale fits the scale too
 */
export function fitSimilarity(
  from: Float32Array,
  to: Float32Array,
  options: { readonly allowScale?: boolean; readonly weights?: ArrayLike<number> } = {},
): Result<SimilarityFit, SimilarityError> {
  if (from.length !== to.length)
    throw new Error(`fitSimilarity requires matched points, got ${from.length / 2} and ${to.length / 2}`);
  const { weights, allowScale = false } = options;
  const n = from.length >> 1;
  let used = 0;
  let total = 0;
  let fx = 0;
  let fy = 0;
  let tx = 0;
  let ty = 0;
  for (let i = 0; i < n; i++) {
    const w = weights ? (weights[i] as number) : 1;
    if (!(w > 0)) continue;
    used++;
    total += w;
    fx += w * (from[2 * i] as number);
    fy += w * (from[2 * i + 1] as number);
    tx += w * (to[2 * i] as number);
    ty += w * (to[2 * i + 1] as number);
  }
  if (used < MIN_POINTS) return fail({ kind: 'too-few-points', count: used, needed: MIN_POINTS });
  fx /= total;
  fy /= total;
  tx /= total;
  ty /= total;
  let dot = 0;
  let cross = 0;
  let fromSquares = 0;
  let toSquares = 0;
  for (let i = 0; i < n; i++) {
    const w = weights ? (weights[i] as number) : 1;
    if (!(w > 0)) continue;
    const ax = (from[2 * i] as number) - fx;
    const ay = (from[2 * i + 1] as number) - fy;
    const bx = (to[2 * i] as number) - tx;
    const by = (to[2 * i + 1] as number) - ty;
    dot += w * (ax * bx + ay * by);
    cross += w * (ax * by - ay * bx);
    fromSquares += w * (ax * ax + ay * ay);
    toSquares += w * (bx * bx + by * by);
  }
  const spread = Math.sqrt(Math.min(fromSquares, toSquares) / total);
  if (!(spread >= MIN_SPREAD_PX)) return fail({ kind: 'degenerate', spreadPx: px(spread), neededPx: px(MIN_SPREAD_PX) });
  const strength = Math.hypot(dot, cross);
  const scale = allowScale ? strength / fromSquares : 1;
  const squares = Math.max(0, toSquares + scale * scale * fromSquares - 2 * scale * strength);
  // Two coordinates a point, less the parameters fitted; weights count as relative precisions.
  const spare = 2 * used - (allowScale ? 4 : 3);
  const variance = squares / spare;
  const se = spare > 0 ? Math.sqrt(variance / (scale * strength)) : Number.POSITIVE_INFINITY;
  return ok({
    motion: {
      rotationDeg: degOfRad(Math.atan2(cross, dot)),
      scale: ratio(scale),
      pivotX: px(fx),
      pivotY: px(fy),
      shiftX: px(tx - fx),
      shiftY: px(ty - fy),
    },
    rmsPx: px(Math.sqrt(squares / total)),
    rotationSeDeg: degOfRad(se),
  });
}
