import { fail, ok, type Result } from '../result.ts';
import { type Deg, degOfRad, type Ratio, ratio } from '../units.ts';
import { GAIN, GROWTH, normalEquations, RIGID_UNKNOWNS, SHIFT_X, SHIFT_Y, SIMILARITY_UNKNOWNS, TURN } from './patch-normal-equations.ts';
import { fitLight, type LevelPose, type LightFit, sampleTemplate } from './patch-sampling.ts';
import type { TemplateLevel } from './patch-template.ts';
import type { Pyramid, PyramidLevel } from './pyramid.ts';
import { ResidualSpread, type RobustKind, robustWeights, tukeySlope } from './robust-weights.ts';
import { factorise, solveFactored } from './symmetric-solve.ts';

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
}

/** Search state: centroid place in frame px, rotation in rad, natural logarithm of the scale. */
export interface Pose {
  x: number;
  y: number;
  angle: number;
  logScale: number;
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

/**
 * Shortens steps in directions that the texture hardly fixes (along a seam, say) and leaves the well-fixed ones alone (Levenberg 1944, Q Appl Math 2:164).
 * Steps only: where the search ends does not depend on it. Share of the mean diagonal; chosen.
 */
const DAMPING = 0.03;
function damp(matrix: Float64Array, n: number): void {
  let sum = 0;
  for (let i = TURN; i < n; i++) sum += matrix[i * n + i] as number;
  const more = (DAMPING * sum) / (n - TURN);
  for (let i = TURN; i < n; i++) matrix[i * n + i] = (matrix[i * n + i] as number) + more;
}

/** The buffers of one alignment and what is done with them. */
export class AlignmentWork {
  private readonly allowScale: boolean;
  private readonly seen: Float32Array;
  private readonly residual: Float32Array;
  private readonly weight: Float32Array;
  private readonly matrix = new Float64Array(SIMILARITY_UNKNOWNS ** 2);
  private readonly vector = new Float64Array(SIMILARITY_UNKNOWNS);
  private readonly spread = new ResidualSpread();
  private readonly at: LevelPose = { centreX: 0, centreY: 0, cos: 1, sin: 0 };

  constructor(pixels: number, allowScale: boolean) {
    this.allowScale = allowScale;
    this.seen = new Float32Array(pixels);
    this.residual = new Float32Array(pixels);
    this.weight = new Float32Array(pixels);
  }

  /** Starts a level with the mask's own weights. */
  forget(level: TemplateLevel): void {
    this.weight.set(level.weight);
  }

  /** One Gauss-Newton step, applied to `pose`; returns its length, px of the level. */
  step(
    level: TemplateLevel,
    picture: Pyramid,
    pose: Pose,
    kind: RobustKind,
    minInsideShare: Ratio,
  ): Result<number, PatchAlignmentError> {
    const { matrix, vector, residual, weight } = this;
    // A coarse picture of a long, plain limb says little of its size, and a size gone astray does not come back.
    const n = this.allowScale && level.level === 0 ? SIMILARITY_UNKNOWNS : RIGID_UNKNOWNS;
    const inside = this.look(level, picture, pose);
    if (!(inside >= minInsideShare)) return fail({ kind: 'outside', insideShare: ratio(inside), neededShare: minInsideShare });
    const light = this.light(level);
    if (!(light.zncc >= MIN_ZNCC)) return fail({ kind: 'no-match', zncc: ratio(light.zncc) });
    this.weigh(level, light, kind);
    normalEquations(level, residual, weight, n, matrix, vector);
    damp(matrix, n);
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
    return ok(length);
  }

  /** How well the template fits at `pose`, on its finest level. */
  judge(level: TemplateLevel, picture: Pyramid, pose: Pose, minInsideShare: Ratio): Result<PatchQuality, PatchAlignmentError> {
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
    if (!factorise(matrix, n)) return fail({ kind: 'ambiguous' });
    vector.fill(0);
    vector[TURN] = 1;
    solveFactored(matrix, n, vector);
    // Variance of an M-estimate (Huber & Ronchetti 2009, Robust Statistics, 7.6): influence against slope, for the mask's normal matrix.
    const pixelVariance = (kept * influence) / (slope * slope);
    const variance = (pixelVariance * (vector[TURN] as number)) / light.gain ** 2;
    const se = slope > 0 ? Math.sqrt(variance) / level.radius : Number.POSITIVE_INFINITY;
    return ok({ zncc, keptZncc, insideShare: ratio(inside), keptShare: ratio(kept / mask), rotationSeDeg: degOfRad(se) });
  }

  /** Reads the picture under the template; returns the share of the mask inside. */
  private look(level: TemplateLevel, picture: Pyramid, pose: Pose): number {
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
    const spread = Math.max(this.spread.of(residual, level.count), LEAST_SPREAD[kind] * Math.abs(gain));
    robustWeights(kind, residual, spread, level.weight, level.count, this.weight);
    return spread;
  }
}
