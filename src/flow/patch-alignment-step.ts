import { fail, ok, type Result } from '../result.ts';
import { type Deg, degOfRad, type Ratio, ratio } from '../units.ts';
import type { AlignmentPose } from './alignment-pose.ts';
import {
  damp,
  GAIN,
  GROWTH,
  normalEquations,
  RIGID_UNKNOWNS,
  SHIFT_X,
  SHIFT_Y,
  SIMILARITY_UNKNOWNS,
  TURN,
} from './patch-normal-equations.ts';
import { addPrior, type PosePrior, pixelsASample, priorCost } from './patch-prior.ts';
import { fitLight, type LevelPose, type LightFit, sampleTemplate } from './patch-sampling.ts';
import type { Pyramid, PyramidLevel } from './pyramid.ts';
import { ResidualSpread, type RobustKind, robustWeights, tukeySlope } from './robust-weights.ts';
import { factorise, solveFactored } from './symmetric-solve.ts';
import type { TemplateLevel } from './template-level.ts';

export type PatchAlignmentError =
  /** Too much of the template lies outside the picture. */
  | { readonly kind: 'outside'; readonly insideShare: Ratio; readonly neededShare: Ratio }
  /** The picture does not resemble the template where the search went. */
  | { readonly kind: 'no-match'; readonly zncc: Ratio }
  /** What is seen of the template leaves a motion open, such as sliding along a single edge. */
  | { readonly kind: 'ambiguous' };

/** How well a template fits where it was found; the fields are explained in PatchAlignment. */
export interface PatchQuality {
  readonly zncc: Ratio;
  readonly keptZncc: Ratio;
  readonly insideShare: Ratio;
  readonly keptShare: Ratio;
  readonly rotationSeDeg: Deg;
  readonly kept: Float32Array;
}

/** Longest step believed, px of the level; the linear picture of the template holds over a pixel or two. Chosen. */
const LONGEST_STEP_PX = 2;
/**
 * The residuals' spread is taken to be at least this share of the template's contrast. A plain limb with one bright seam has a small spread, so that
 * the seam, a pixel off its place, would count as a stranger and be left out, though it alone shows the motion. Chosen: wide while searching.
 */
const LEAST_SPREAD: Readonly<Record<RobustKind, number>> = { huber: 0.7, tukey: 0.15 };
/** Under this correlation the gain is too small to divide by. Chosen. */
const MIN_ZNCC = 0.1;

/** A step may make the cost worse by this much, standard errors squared, before half of it is taken back: weights change a little meanwhile. Chosen. */
const COST_SLACK = 0.02;
/** A step is halved at most this often; then it stands. Chosen. */
const MOST_HALVINGS = 4;
/** With a prior a search is done when its next step promises less than this, standard errors squared (Newton's decrement). Chosen: 0.17 and 0.045 of one. */
const DONE_DECREMENT: Readonly<Record<RobustKind, number>> = { huber: 0.03, tukey: 0.002 };
/** Share of a template's variance that stays unexplained where it fits, by light, bending and noise. Chosen. */
const UNEXPLAINED = 0.05;

/** The buffers of one alignment and what is done with them. */
export class AlignmentWork {
  private readonly allowScale: boolean;
  private readonly prior: PosePrior | null;
  private readonly seen: Float32Array;
  private readonly residual: Float32Array;
  private readonly weight: Float32Array;
  private readonly matrix = new Float64Array(SIMILARITY_UNKNOWNS ** 2);
  private readonly vector = new Float64Array(SIMILARITY_UNKNOWNS);
  private readonly spread = new ResidualSpread();
  private readonly right = new Float64Array(SIMILARITY_UNKNOWNS);
  /** Spread of the last residuals, grey levels. */
  private bulk = 0;
  /** Where the last step started, and how often it was halved. */
  private best: (AlignmentPose & { readonly cost: number; halvings: number }) | null = null;
  private readonly at: LevelPose = { centreX: 0, centreY: 0, cos: 1, sin: 0 };

  constructor(pixels: number, allowScale: boolean, prior: PosePrior | null) {
    this.allowScale = allowScale;
    this.prior = prior;
    this.seen = new Float32Array(pixels);
    this.residual = new Float32Array(pixels);
    this.weight = new Float32Array(pixels);
  }

  /** Starts a level with the mask's own weights. */
  forget(level: TemplateLevel): void {
    this.weight.set(level.weight);
    this.best = null;
  }

  /** Goes on with other weights: costs are no longer alike. */
  restage(): void {
    this.best = null;
  }

  /**
   * One Gauss-Newton step, applied to `pose`; a step that made the fit worse is taken back half way first.
   * @returns whether the search on this level is done: the step is short, or short beside the standard error of the answer
   */
  step(
    level: TemplateLevel,
    picture: Pyramid,
    pose: AlignmentPose,
    kind: RobustKind,
    minInsideShare: Ratio,
    donePx: number,
  ): Result<boolean, PatchAlignmentError> {
    const { matrix, vector, residual, weight } = this;
    // A coarse picture of a long, plain limb says little of its size, and a size gone astray does not come back unless a prior holds it.
    const n = this.allowScale && (this.prior || level.level === 0) ? SIMILARITY_UNKNOWNS : RIGID_UNKNOWNS;
    const inside = this.look(level, picture, pose);
    if (!(inside >= minInsideShare)) return fail({ kind: 'outside', insideShare: ratio(inside), neededShare: minInsideShare });
    const light = this.light(level);
    // Tukey's weights change too much from step to step for their costs to be compared; the search is near its end by then.
    const cost = kind === 'huber' ? this.cost(level, pose) : 0;
    if (this.best && cost > this.best.cost + COST_SLACK && this.best.halvings < MOST_HALVINGS) {
      this.halve(pose, this.best);
      return ok(false);
    }
    if (!(light.zncc >= MIN_ZNCC)) return fail({ kind: 'no-match', zncc: ratio(light.zncc) });
    this.best = { ...pose, cost, halvings: 0 };
    this.weigh(level, light, kind);
    normalEquations(level, residual, weight, n, matrix, vector);
    if (this.prior) addPrior(this.prior, level, pose, light.gain, this.bulk, n, matrix, vector);
    else damp(matrix, n);
    this.right.set(vector);
    if (!factorise(matrix, n)) return fail({ kind: 'ambiguous' });
    solveFactored(matrix, n, vector);
    const gain = light.gain + (vector[GAIN] as number);
    if (!(gain > 0)) return fail({ kind: 'no-match', zncc: ratio(light.zncc) });
    const turn = (vector[TURN] as number) / gain;
    const grow = n === SIMILARITY_UNKNOWNS ? (vector[GROWTH] as number) / gain : 0;
    const dx = (vector[SHIFT_X] as number) / gain;
    const dy = (vector[SHIFT_Y] as number) / gain;
    const length = Math.max(Math.hypot(turn, grow), Math.hypot(dx, dy));
    const share = Math.min(1, LONGEST_STEP_PX / length) || 1;
    // The step moves the template; its inverse, put before the present motion, moves the picture part to meet it.
    pose.angle -= (share * turn) / level.radius;
    pose.logScale -= (share * grow) / level.radius;
    const reach = share * Math.exp(pose.logScale) * 2 ** level.level;
    const cos = reach * Math.cos(pose.angle);
    const sin = reach * Math.sin(pose.angle);
    pose.x -= cos * dx - sin * dy;
    pose.y -= sin * dx + cos * dy;
    if (length <= donePx) return ok(true);
    if (!this.prior) return ok(false);
    let decrement = 0;
    for (let i = TURN; i < n; i++) decrement += (vector[i] as number) * (this.right[i] as number);
    return ok(decrement <= DONE_DECREMENT[kind] * this.bulk * this.bulk * pixelsASample(level));
  }

  private halve(pose: AlignmentPose, best: AlignmentPose & { halvings: number }): void {
    best.halvings++;
    pose.x = (pose.x + best.x) / 2;
    pose.y = (pose.y + best.y) / 2;
    pose.angle = (pose.angle + best.angle) / 2;
    pose.logScale = (pose.logScale + best.logScale) / 2;
  }

  /** What the search makes small: how unlike the picture is, and with a prior how unlikely the pose, in standard errors squared. */
  private cost(level: TemplateLevel, pose: AlignmentPose): number {
    const { zncc } = fitLight(level, this.seen, level.weight);
    const unlike = ((1 - zncc * Math.abs(zncc)) * level.totalWeight) / (UNEXPLAINED * pixelsASample(level));
    return this.prior ? unlike + priorCost(this.prior, pose) : unlike;
  }

  /** How well the template fits at `pose`, on its finest level. */
  judge(
    level: TemplateLevel,
    picture: Pyramid,
    pose: AlignmentPose,
    minInsideShare: Ratio,
  ): Result<PatchQuality, PatchAlignmentError> {
    const { matrix, vector, residual, weight, seen } = this;
    const n = this.allowScale ? SIMILARITY_UNKNOWNS : RIGID_UNKNOWNS;
    const inside = this.look(level, picture, pose);
    if (!(inside >= minInsideShare)) return fail({ kind: 'outside', insideShare: ratio(inside), neededShare: minInsideShare });
    const zncc = ratio(fitLight(level, seen, level.weight).zncc);
    const light = this.light(level);
    if (!(light.zncc >= MIN_ZNCC)) return fail({ kind: 'no-match', zncc });
    const spread = this.weigh(level, light, 'tukey');
    const keptZncc = ratio(fitLight(level, seen, weight).zncc);
    let mask = 0;
    let kept = 0;
    let influence = 0;
    let slope = 0;
    for (let k = 0; k < level.count; k++) {
      const r = residual[k] as number;
      if (Number.isNaN(r)) continue;
      const m = level.weight[k] as number;
      const w = weight[k] as number;
      mask += m;
      kept += w;
      influence += (w * w * r * r) / m;
      slope += m * tukeySlope(r, spread);
    }
    normalEquations(level, residual, weight, n, matrix, vector);
    if (this.prior) addPrior(this.prior, level, pose, light.gain, this.bulk, n, matrix, vector);
    if (!factorise(matrix, n)) return fail({ kind: 'ambiguous' });
    vector.fill(0);
    vector[TURN] = 1;
    solveFactored(matrix, n, vector);
    // Variance of an M-estimate (Huber & Ronchetti 2009, Robust Statistics, 7.6): influence against slope, for the mask's normal matrix.
    const pixelVariance = (kept * influence) / (slope * slope);
    const samples = this.prior ? pixelsASample(level) : 1;
    const variance = (samples * pixelVariance * (vector[TURN] as number)) / light.gain ** 2;
    const se = slope > 0 ? Math.sqrt(variance) / level.radius : Number.POSITIVE_INFINITY;
    return ok({
      zncc,
      keptZncc,
      insideShare: ratio(inside),
      keptShare: ratio(kept / mask),
      rotationSeDeg: degOfRad(se),
      kept: this.keptOf(level),
    });
  }

  /** Robust weight over mask weight of each pixel; 0 outside the picture. */
  private keptOf(level: TemplateLevel): Float32Array {
    return Float32Array.from(level.weight, (m, k) => (Number.isNaN(this.residual[k]) ? 0 : (this.weight[k] as number) / m));
  }

  /** Reads the picture under the template; returns the share of the mask inside. */
  private look(level: TemplateLevel, picture: Pyramid, pose: AlignmentPose): number {
    const shrink = 1 / 2 ** level.level;
    const scale = Math.exp(pose.logScale);
    this.at.centreX = (pose.x - picture.originX) * shrink;
    this.at.centreY = (pose.y - picture.originY) * shrink;
    this.at.cos = scale * Math.cos(pose.angle);
    this.at.sin = scale * Math.sin(pose.angle);
    return sampleTemplate(level, (picture.levels[level.level] as PyramidLevel).image, this.at, this.seen) / level.totalWeight;
  }

  /** The light over the pixels kept so far, or over the whole mask where those alone do not show the template. */
  private light(level: TemplateLevel): LightFit {
    const kept = fitLight(level, this.seen, this.weight);
    return kept.zncc >= MIN_ZNCC ? kept : fitLight(level, this.seen, level.weight);
  }

  /** Residuals under a light, and the robust weights that follow from them; returns the residuals' spread. */
  private weigh(level: TemplateLevel, { gain, bias }: LightFit, kind: RobustKind): number {
    const { residual, seen } = this;
    for (let k = 0; k < level.count; k++) residual[k] = (seen[k] as number) - gain * (level.value[k] as number) - bias;
    this.bulk = this.spread.of(residual, level.count);
    const spread = Math.max(this.bulk, LEAST_SPREAD[kind] * Math.abs(gain));
    robustWeights(kind, residual, spread, level.weight, level.count, this.weight);
    return spread;
  }
}
