import type { AlignmentPose } from './alignment-pose.ts';
import { SIMILARITY_UNKNOWNS, TURN } from './patch-normal-equations.ts';
import type { TemplateLevel } from './template-level.ts';

/**
 * What is known of a template's motion beside the picture: where a point of it that hangs on a neighbour must lie, how it turned, how it grew.
 * Along a plain limb the texture hardly fixes the shift; the joint does.
 */
export interface PosePrior {
  /** The joint in the template's own picture, px from the centroid. */
  readonly jointX: number;
  readonly jointY: number;
  /** Where it is expected now, frame px, and the standard deviation of that. */
  readonly atX: number;
  readonly atY: number;
  readonly jointSdPx: number;
  /** The expected turn and the expected natural logarithm of the scale, from the template's picture on, and their standard deviations. */
  readonly turnRad: number;
  readonly turnSdRad: number;
  readonly logScale: number;
  readonly logScaleSd: number;
}

/**
 * Neighbouring pixels err together (shading, cloth, the template's own noise): about this many frame px count as one observation.
 * Chosen: for segments that hold still the stated errors then agree with those met on clips with truth within a factor of two.
 */
const PIXELS_A_SAMPLE = 60;

/** Frame px^2 that count as one observation, in pixels of a level. */
export const pixelsASample = (level: TemplateLevel): number => Math.max(1, PIXELS_A_SAMPLE / 4 ** level.level);

/**
 * Adds the prior to normal equations made for steps of `gain` times a motion.
 * @param spread standard deviation of the residuals, grey levels
 */
export function addPrior(
  prior: PosePrior,
  level: TemplateLevel,
  pose: AlignmentPose,
  gain: number,
  spread: number,
  n: number,
  matrix: Float64Array,
  vector: Float64Array,
): void {
  const variance = spread * spread * pixelsASample(level);
  const shrink = 1 / 2 ** level.level;
  const scale = Math.exp(pose.logScale);
  const cos = Math.cos(pose.angle);
  const sin = Math.sin(pose.angle);
  // The joint's miss, turned back into the template's picture, px of the level.
  const missX = prior.atX - (pose.x + scale * (cos * prior.jointX - sin * prior.jointY));
  const missY = prior.atY - (pose.y + scale * (sin * prior.jointX + cos * prior.jointY));
  const ex = (shrink * (cos * missX + sin * missY)) / scale;
  const ey = (shrink * (-sin * missX + cos * missY)) / scale;
  const jx = (shrink * prior.jointX) / level.radius;
  const jy = (shrink * prior.jointY) / level.radius;
  const jointWeight = variance / (prior.jointSdPx * shrink) ** 2;
  const grows = n === SIMILARITY_UNKNOWNS;
  // Miss after a step (turn, growth, shift): ex - jy turn + jx growth + shift x, and ey + jx turn + jy growth + shift y.
  addRow(matrix, vector, n, jointWeight, gain, ex, -jy, 1, 0, grows ? jx : 0);
  addRow(matrix, vector, n, jointWeight, gain, ey, jx, 0, 1, grows ? jy : 0);
  const turnMiss = (prior.turnRad - pose.angle) * level.radius;
  addRow(matrix, vector, n, variance / (prior.turnSdRad * level.radius) ** 2, gain, turnMiss, 1, 0, 0, 0);
  if (!grows) return;
  const growthMiss = (prior.logScale - pose.logScale) * level.radius;
  addRow(matrix, vector, n, variance / (prior.logScaleSd * level.radius) ** 2, gain, growthMiss, 0, 0, 0, 1);
}

/** One prior residual, `miss` + turn * t + x * dx + y * dy + growth * g, wanted to be 0. */
function addRow(
  matrix: Float64Array,
  vector: Float64Array,
  n: number,
  weight: number,
  gain: number,
  miss: number,
  turn: number,
  x: number,
  y: number,
  growth: number,
): void {
  const row = [0, 0, turn, x, y, growth];
  for (let i = TURN; i < n; i++) {
    const a = (weight * (row[i] as number)) / gain;
    vector[i] = (vector[i] as number) - a * miss;
    for (let j = TURN; j <= i; j++) matrix[i * n + j] = (matrix[i * n + j] as number) + (a * (row[j] as number)) / gain;
  }
}

/** How unlikely a pose is: the sum of its misses squared, in standard deviations. */
export function priorCost(prior: PosePrior, pose: AlignmentPose): number {
  const scale = Math.exp(pose.logScale);
  const cos = scale * Math.cos(pose.angle);
  const sin = scale * Math.sin(pose.angle);
  const missX = prior.atX - (pose.x + cos * prior.jointX - sin * prior.jointY);
  const missY = prior.atY - (pose.y + sin * prior.jointX + cos * prior.jointY);
  return (
    (missX * missX + missY * missY) / prior.jointSdPx ** 2 +
    ((prior.turnRad - pose.angle) / prior.turnSdRad) ** 2 +
    ((prior.logScale - pose.logScale) / prior.logScaleSd) ** 2
  );
}
