import { fail, ok, type Result } from '../result.ts';
import { type Px, px } from '../units.ts';
import type { FloatImage } from './grey.ts';
import { normalEquations, RIGID_UNKNOWNS, SHIFT_X, SHIFT_Y, TURN } from './patch-normal-equations.ts';
import { halved, type Pyramid, type PyramidLevel } from './pyramid.ts';
import { factorise } from './symmetric-solve.ts';
import type { TemplateLevel } from './template-level.ts';

export type TemplateError =
  /** The mask covers too few pixels of the picture. */
  | { readonly kind: 'too-small'; readonly pixels: number; readonly neededPixels: number }
  /** The masked part shows no texture: its grey levels hardly differ. */
  | { readonly kind: 'flat'; readonly contrast: number; readonly neededContrast: number }
  /** The texture leaves a shift or the turn open: a single edge, stripes, rings about the centroid. */
  | { readonly kind: 'ambiguous' };

/** A part of a rest picture, ready to be found again in other pictures. Make it once, use it every frame. */
export interface PatchTemplate {
  /** The weighted centroid of the mask, frame px: the pivot of every motion found with this template. */
  readonly centroidX: Px;
  readonly centroidY: Px;
  /** Finest first; level 0 is always there, coarse levels with too few pixels are left out. */
  readonly levels: readonly TemplateLevel[];
}

/** Fewest masked pixels of a level. Chosen: four motion and two light unknowns, ten pixels each. */
const MIN_PIXELS = 60;
/** Least standard deviation of the masked grey levels; a webcam's own noise is 1 to 2. Chosen. */
const MIN_CONTRAST = 2;
/**
 * Least energy of the slopes met when turning, as a share of those met when shifting. Measured: rings about the centroid 0.0006, rings 1 px beside it
 * 0.004, a foot 1.4. Chosen between.
 */
const MIN_TURN_SHARE = 1e-3;
/** Coarse pixels blended from less than this much mask show mostly background and are left out. Chosen. */
const MIN_COARSE_WEIGHT = 0.5;

/**
 * Takes the masked part of a rest picture apart for `alignPatch`: centroid, normalised values and steepest-descent images a level.
 * @param rest pyramid of the rest picture (or crop); its level count bounds the template's
 * @param mask weight of each pixel of level 0 in [0, 1], row-major, same size as that picture; 0 leaves a pixel out
 */
export function prepareTemplate(rest: Pyramid, mask: Float32Array): Result<PatchTemplate, TemplateError> {
  const base = (rest.levels[0] as PyramidLevel).image;
  if (mask.length !== base.data.length) {
    throw new Error(`prepareTemplate requires one weight a pixel, got ${mask.length} for ${base.data.length}`);
  }
  const centroid = centroidOf(mask, base.width);
  if (centroid.pixels < MIN_PIXELS) return fail({ kind: 'too-small', pixels: centroid.pixels, neededPixels: MIN_PIXELS });
  const levels: TemplateLevel[] = [];
  let weights: FloatImage = { width: base.width, height: base.height, data: mask };
  for (let n = 0; n < rest.levels.length; n++) {
    if (n > 0) weights = halved(weights);
    const shrink = 1 / 2 ** n;
    const level = levelOf(rest.levels[n] as PyramidLevel, weights.data, n, centroid.x * shrink, centroid.y * shrink);
    if (level.count < MIN_PIXELS || (n > 0 && level.contrast < MIN_CONTRAST)) break;
    levels.push(level);
  }
  const finest = levels[0] as TemplateLevel;
  if (!(finest.contrast >= MIN_CONTRAST)) {
    return fail({ kind: 'flat', contrast: finest.contrast, neededContrast: MIN_CONTRAST });
  }
  if (!fixesMotion(finest)) return fail({ kind: 'ambiguous' });
  return ok({ centroidX: px(rest.originX + centroid.x), centroidY: px(rest.originY + centroid.y), levels });
}

function fixesMotion(level: TemplateLevel): boolean {
  const n = RIGID_UNKNOWNS;
  const matrix = new Float64Array(n * n);
  normalEquations(level, level.value, level.weight, n, matrix, new Float64Array(n));
  const energy = (i: number): number => matrix[i * n + i] as number;
  const turns = energy(TURN) >= (MIN_TURN_SHARE * (energy(SHIFT_X) + energy(SHIFT_Y))) / 2;
  return turns && factorise(matrix, n);
}

function centroidOf(mask: Float32Array, width: number): { readonly x: number; readonly y: number; readonly pixels: number } {
  let total = 0;
  let sx = 0;
  let sy = 0;
  let pixels = 0;
  for (let i = 0; i < mask.length; i++) {
    const w = mask[i] as number;
    if (!(w > 0)) continue;
    pixels++;
    total += w;
    sx += w * (i % width);
    sy += w * Math.floor(i / width);
  }
  return { x: sx / total, y: sy / total, pixels };
}

function levelOf(source: PyramidLevel, mask: Float32Array, level: number, cx: number, cy: number): TemplateLevel {
  const { width, data } = source.image;
  const least = level === 0 ? 0 : MIN_COARSE_WEIGHT;
  const kept: number[] = [];
  let total = 0;
  let sum = 0;
  let squares = 0;
  for (let i = 0; i < mask.length; i++) {
    const w = mask[i] as number;
    if (!(w > least)) continue;
    const dx = (i % width) - cx;
    const dy = Math.floor(i / width) - cy;
    kept.push(i);
    total += w;
    sum += w * (data[i] as number);
    squares += w * (dx * dx + dy * dy);
  }
  const count = kept.length;
  const mean = sum / total;
  let variance = 0;
  for (const i of kept) variance += (mask[i] as number) * ((data[i] as number) - mean) ** 2;
  const contrast = Math.sqrt(variance / total);
  const radius = Math.sqrt(squares / total);
  const slopes = source.gradients();
  const lists = {
    x: new Float32Array(count),
    y: new Float32Array(count),
    value: new Float32Array(count),
    weight: new Float32Array(count),
    steepest: new Float32Array(4 * count),
  };
  kept.forEach((i, k) => {
    const dx = (i % width) - cx;
    const dy = Math.floor(i / width) - cy;
    const gx = (slopes.x[i] as number) / contrast;
    const gy = (slopes.y[i] as number) / contrast;
    lists.x[k] = dx;
    lists.y[k] = dy;
    lists.value[k] = ((data[i] as number) - mean) / contrast;
    lists.weight[k] = mask[i] as number;
    lists.steepest[4 * k] = (gy * dx - gx * dy) / radius;
    lists.steepest[4 * k + 1] = (gx * dx + gy * dy) / radius;
    lists.steepest[4 * k + 2] = gx;
    lists.steepest[4 * k + 3] = gy;
  });
  return { level, count, radius, totalWeight: total, contrast, ...lists };
}
