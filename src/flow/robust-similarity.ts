import { fail, ok, type Result } from '../result.ts';
import { type Px, px } from '../units.ts';
import { movedPoint, type PlaneMotion } from './plane-motion.ts';
import { uniformFrom } from './prng.ts';
import { fitSimilarity, MIN_POINTS, type SimilarityError, type SimilarityFit } from './similarity.ts';

export interface RobustSimilarityOptions {
  /** Seed of the draws; the same seed and points give the same result. */
  readonly seed: number;
  /** A point whose residual is at most this is an inlier. */
  readonly inlierPx: Px;
  /** Pairs drawn. 100 find a clean pair among half outliers with a chance of failing of 3e-13. */
  readonly draws: number;
  readonly allowScale: boolean;
  /** Fewest inliers that count as agreement. */
  readonly minInliers: number;
}

/** 1 px, 100 draws, 4 inliers: chosen. */
export const ROBUST_SIMILARITY_DEFAULTS: RobustSimilarityOptions = {
  seed: 1,
  inlierPx: px(1),
  draws: 100,
  allowScale: false,
  minInliers: 4,
};

export type RobustSimilarityError =
  | SimilarityError
  /** No motion explains enough of the points. */
  | { readonly kind: 'no-agreement'; readonly inliers: number; readonly needed: number };

export interface RobustSimilarityFit extends SimilarityFit {
  /** 1 for an inlier, 0 otherwise, one per point. */
  readonly inliers: Uint8Array;
  readonly inlierCount: number;
}

/** Refits on the inliers; the set seldom changes after the first. */
const REFITS = 3;

/**
 * The motion most of the points agree on: random sample consensus over pairs (Fischler & Bolles 1981, CACM 24:381), then least squares on the inliers.
 * `rmsPx` and `rotationSeDeg` are those of the inliers; cutting at `inlierPx` makes both a little too small.
 * @param from,to x, y pairs, px, matched; @param weights one per point, 0 leaves the point out (e.g. a point that was not tracked)
 */
export function fitRobustSimilarity(
  from: Float32Array,
  to: Float32Array,
  options: Partial<RobustSimilarityOptions> = {},
  weights?: ArrayLike<number>,
): Result<RobustSimilarityFit, RobustSimilarityError> {
  const settings = { ...ROBUST_SIMILARITY_DEFAULTS, ...options };
  const candidates: number[] = [];
  for (let i = 0; i < from.length >> 1; i++) if (!weights || (weights[i] as number) > 0) candidates.push(i);
  const needed = Math.max(MIN_POINTS, settings.minInliers);
  if (candidates.length < needed) return fail({ kind: 'too-few-points', count: candidates.length, needed });
  // Says early, with the measured spread, that no pair of these points carries a turn.
  const all = fitSimilarity(from, to, { allowScale: settings.allowScale, ...(weights ? { weights } : {}) });
  if (!all.ok && all.error.kind === 'degenerate') return all;

  let inliers = new Uint8Array(from.length >> 1);
  let count = bestPairInliers(from, to, candidates, settings, inliers);
  if (count < needed) return fail({ kind: 'no-agreement', inliers: count, needed });
  let fit: SimilarityFit | undefined;
  for (let round = 0; round < REFITS; round++) {
    const chosen = weights ? Float32Array.from(inliers, (v, i) => v * (weights[i] as number)) : inliers;
    const refit = fitSimilarity(from, to, { allowScale: settings.allowScale, weights: chosen });
    if (!refit.ok) return refit;
    fit = refit.value;
    const next = new Uint8Array(inliers.length);
    const nextCount = markInliers(from, to, candidates, fit.motion, settings.inlierPx, next);
    if (nextCount < needed || next.every((v, i) => v === inliers[i])) break;
    if (round === REFITS - 1) break;
    inliers = next;
    count = nextCount;
  }
  if (!fit) throw new Error('fitRobustSimilarity requires at least one refit, got 0');
  return ok({ ...fit, inliers, inlierCount: count });
}

/** Marks the inliers of the best pair drawn (most inliers, the earliest on a tie) and returns how many. */
function bestPairInliers(
  from: Float32Array,
  to: Float32Array,
  candidates: readonly number[],
  settings: RobustSimilarityOptions,
  inliers: Uint8Array,
): number {
  const random = uniformFrom(settings.seed);
  const pairFrom = new Float32Array(4);
  const pairTo = new Float32Array(4);
  const trial = new Uint8Array(inliers.length);
  let best = 0;
  for (let draw = 0; draw < settings.draws; draw++) {
    const first = Math.floor(random() * candidates.length);
    const second = (first + 1 + Math.floor(random() * (candidates.length - 1))) % candidates.length;
    const a = 2 * (candidates[first] as number);
    const b = 2 * (candidates[second] as number);
    pairFrom.set(from.subarray(a, a + 2));
    pairFrom.set(from.subarray(b, b + 2), 2);
    pairTo.set(to.subarray(a, a + 2));
    pairTo.set(to.subarray(b, b + 2), 2);
    const fit = fitSimilarity(pairFrom, pairTo, { allowScale: settings.allowScale });
    if (!fit.ok) continue;
    const count = markInliers(from, to, candidates, fit.value.motion, settings.inlierPx, trial);
    if (count > best) {
      best = count;
      inliers.set(trial);
    }
  }
  return best;
}

function markInliers(
  from: Float32Array,
  to: Float32Array,
  candidates: readonly number[],
  motion: PlaneMotion,
  inlierPx: number,
  out: Uint8Array,
): number {
  let count = 0;
  out.fill(0);
  for (const i of candidates) {
    const [x, y] = movedPoint(motion, from[2 * i] as number, from[2 * i + 1] as number);
    const near = Math.hypot(x - (to[2 * i] as number), y - (to[2 * i + 1] as number)) <= inlierPx;
    if (!near) continue;
    out[i] = 1;
    count++;
  }
  return count;
}
