import type { FloatImage } from './grey.ts';
import type { TemplateLevel } from './template-level.ts';

/** A turn, growth and place of a template on one pyramid level: pixel (x, y) from the centroid lies at (centreX + cos x - sin y, centreY + sin x + cos y). */
export interface LevelPose {
  /** Where the centroid lies, px of the level's picture. */
  centreX: number;
  centreY: number;
  /** Scale times cosine and sine of the rotation. */
  cos: number;
  sin: number;
}

/**
 * Reads the picture under every template pixel, bilinear.
 * @param out one grey value a template pixel; NaN where the pixel lies outside the picture
 * @returns the mask weight that lies inside
 */
export function sampleTemplate(level: TemplateLevel, image: FloatImage, pose: LevelPose, out: Float32Array): number {
  const { count, x, y, weight } = level;
  const { width, height, data } = image;
  const { centreX, centreY, cos, sin } = pose;
  const right = width - 1;
  const bottom = height - 1;
  let inside = 0;
  for (let k = 0; k < count; k++) {
    const dx = x[k] as number;
    const dy = y[k] as number;
    const u = centreX + cos * dx - sin * dy;
    const v = centreY + sin * dx + cos * dy;
    if (!(u >= 0 && v >= 0 && u < right && v < bottom)) {
      out[k] = Number.NaN;
      continue;
    }
    const column = u | 0;
    const row = v | 0;
    const fx = u - column;
    const fy = v - row;
    const at = row * width + column;
    const a = data[at] as number;
    const b = data[at + width] as number;
    const upper = a + fx * ((data[at + 1] as number) - a);
    const lower = b + fx * ((data[at + width + 1] as number) - b);
    out[k] = upper + fy * (lower - upper);
    inside += weight[k] as number;
  }
  return inside;
}

/** The light under which the template shows in a picture: seen = gain * value + bias, with the correlation of that fit. */
export interface LightFit {
  readonly gain: number;
  readonly bias: number;
  /** Weighted zero-mean normalised cross-correlation, -1 to 1; 0 when the picture is uniform there. */
  readonly zncc: number;
}

/** Weighted regression of the seen grey values on the template's; `weight` one per template pixel, pixels seen as NaN are left out. */
export function fitLight(level: TemplateLevel, seen: Float32Array, weight: Float32Array): LightFit {
  const { count, value } = level;
  let w = 0;
  let wt = 0;
  let ws = 0;
  let wtt = 0;
  let wss = 0;
  let wts = 0;
  for (let k = 0; k < count; k++) {
    const s = seen[k] as number;
    if (Number.isNaN(s)) continue;
    const t = value[k] as number;
    const g = weight[k] as number;
    w += g;
    wt += g * t;
    ws += g * s;
    wtt += g * t * t;
    wss += g * s * s;
    wts += g * t * s;
  }
  if (!(w > 0)) return { gain: 0, bias: 0, zncc: 0 };
  const mt = wt / w;
  const mean = ws / w;
  const vt = wtt / w - mt * mt;
  const vs = wss / w - mean * mean;
  const cov = wts / w - mt * mean;
  if (!(vt > UNIFORM_VARIANCE && vs > UNIFORM_VARIANCE)) return { gain: 0, bias: mean, zncc: 0 };
  const gain = cov / vt;
  return { gain, bias: mean - gain * mt, zncc: Math.max(-1, Math.min(1, cov / Math.sqrt(vt * vs))) };
}

/** Below this a variance is rounding only: (grey levels)^2, or of the normalised template. Chosen. */
export const UNIFORM_VARIANCE = 1e-6;
