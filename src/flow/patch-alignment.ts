import { ok, type Result } from '../result.ts';
import { type Deg, degOfRad, px, type Ratio, radOfDeg, ratio } from '../units.ts';
import type { AlignmentPose } from './alignment-pose.ts';
import { AlignmentWork, type PatchAlignmentError } from './patch-alignment-step.ts';
import type { PosePrior } from './patch-prior.ts';
import type { PatchTemplate } from './patch-template.ts';
import { aboutPivot, type PlaneMotion } from './plane-motion.ts';
import type { Pyramid } from './pyramid.ts';
import type { RobustKind } from './robust-weights.ts';
import type { TemplateLevel } from './template-level.ts';

export interface PatchAlignmentOptions {
  /** Fits the scale as well; otherwise the scale of the start is kept. */
  readonly allowScale: boolean;
  /** Most iterations a level. */
  readonly iterations: number;
  /** Coarsest and finest pyramid level used; levels the template or the picture lacks are passed over. */
  readonly coarsestLevel: number;
  readonly finestLevel: number;
  /** Least share of the template's mask inside the picture. */
  readonly minInsideShare: Ratio;
  /** What else is known of the motion; null when nothing is. */
  readonly prior: PosePrior | null;
}

/** All chosen; see tests/bench/flow.bench.ts for the time they take. */
export const PATCH_ALIGNMENT_DEFAULTS: PatchAlignmentOptions = {
  allowScale: false,
  iterations: 15,
  coarsestLevel: 2,
  finestLevel: 0,
  minInsideShare: ratio(0.5),
  prior: null,
};

export interface PatchAlignment {
  /** From the rest picture to this one, about the template's centroid. Positive rotation is clockwise on the screen. */
  readonly motion: PlaneMotion;
  /** Masked zero-mean normalised cross-correlation at the solution, -1 to 1; no pixel is left out as a stranger. */
  readonly zncc: Ratio;
  /** The same over the pixels that the robust fit kept, by their weights: high where the segment itself fits, whatever passes behind it. */
  readonly keptZncc: Ratio;
  /** Share of the mask's weight that lies inside the picture. */
  readonly insideShare: Ratio;
  /** Share of the weight inside the picture that the robust fit kept; about 0.9 when everything fits. */
  readonly keptShare: Ratio;
  /** How much the robust fit kept of each pixel of the finest level used, 0 to 1. */
  readonly kept: Float32Array;
  /** Over all levels. */
  readonly iterations: number;
  /** Whether the finest level's search ended by itself: within STEP_DONE_PX, or far within the standard error where there is a prior. */
  readonly converged: boolean;
  /** Standard error of the rotation from picture noise alone (and the prior's own, where there is one): what a wrong part of the picture or bending flesh adds is not in it. */
  readonly rotationSeDeg: Deg;
}

/** A step that moves the centroid, and a pixel at the radius, by at most this, px of the level, ends a level: finest, coarser. Chosen. */
const STEP_DONE_PX = 0.002;
const COARSE_STEP_DONE_PX = 0.02;
/**
 * Level by level, coarse to fine, with Huber's weights; at last the finest once more with Tukey's. With a prior the start is near, and Huber's round
 * on the finest level is left out unless it is the only level.
 */
function* stages(levels: readonly TemplateLevel[], near: boolean): Generator<readonly [TemplateLevel, RobustKind, number]> {
  const finest = levels[levels.length - 1] as TemplateLevel;
  for (const level of levels) {
    if (level !== finest || !near || levels.length === 1) yield [level, 'huber', COARSE_STEP_DONE_PX];
  }
  yield [finest, 'tukey', STEP_DONE_PX];
}

/**
 * Finds a template again in another picture: the rigid motion (or similarity) about its centroid that makes the picture under it the template's.
 * Inverse-compositional Gauss-Newton (Baker & Matthews 2004, IJCV 56:221), coarse to fine; gain and bias of the light are unknowns of the same
 * least squares, so brightness and contrast do not matter; Huber weights on coarse levels and Tukey's on the finest keep strangers out.
 * @param start first guess, about any pivot. On synthetic 90 x 50 px patches 72 of 72 starts off by 8 degrees and 4 px led to the answer, 71 off by
 *   10 and 6, 66 off by 14 and 7, 48 off by 20 and 10; the others ended in `no-match`. Farther off, start from `searchRotation`.
 */
export function alignPatch(
  template: PatchTemplate,
  picture: Pyramid,
  start: PlaneMotion,
  options: Partial<PatchAlignmentOptions> = {},
): Result<PatchAlignment, PatchAlignmentError> {
  const settings = { ...PATCH_ALIGNMENT_DEFAULTS, ...options };
  const usable = template.levels.filter((l) => l.level < picture.levels.length && l.level <= settings.coarsestLevel);
  const levels = usable.filter((l, i) => l.level >= settings.finestLevel || i === usable.length - 1).reverse();
  const finest = levels[levels.length - 1];
  if (!finest) throw new Error('alignPatch requires a level both in the template and the picture, got none');
  const work = new AlignmentWork(finest.count, settings.allowScale, settings.prior);
  const first = aboutPivot(start, template.centroidX, template.centroidY);
  const pose: AlignmentPose = {
    x: template.centroidX + first.shiftX,
    y: template.centroidY + first.shiftY,
    angle: radOfDeg(first.rotationDeg),
    logScale: Math.log(first.scale),
  };
  let iterations = 0;
  let converged = false;
  let before: TemplateLevel | null = null;
  for (const [level, kind, done] of stages(levels, settings.prior !== null)) {
    converged = false;
    if (level !== before) work.forget(level);
    else work.restage();
    before = level;
    for (let i = 0; i < settings.iterations && !converged; i++) {
      iterations++;
      const step = work.step(level, picture, pose, kind, settings.minInsideShare, done);
      if (!step.ok) return step;
      converged = step.value;
    }
  }
  const quality = work.judge(finest, picture, pose, settings.minInsideShare);
  if (!quality.ok) return quality;
  return ok({
    motion: {
      rotationDeg: degOfRad(pose.angle),
      scale: ratio(Math.exp(pose.logScale)),
      pivotX: template.centroidX,
      pivotY: template.centroidY,
      shiftX: px(pose.x - template.centroidX),
      shiftY: px(pose.y - template.centroidY),
    },
    iterations,
    converged,
    ...quality.value,
  });
}
