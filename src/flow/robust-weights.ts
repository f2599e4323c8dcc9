/**
 * Weights that keep strangers (pixels the template does not explain: background, a hand, a highlight) from pulling a least-squares fit.
 * Huber 1964, Ann Math Stat 35:73; Beaton & Tukey 1974, Technometrics 16:147. Tuning constants: 95 % efficiency under Gaussian noise.
 */
export type RobustKind = 'huber' | 'tukey';

const HUBER_TUNING = 1.345;
const TUKEY_TUNING = 4.685;
/** Median absolute deviation to standard deviation for Gaussian noise. */
const MAD_TO_SD = 1.4826;
/** A residual spread below the rounding of 8-bit grey levels (1/sqrt 12) is not to be believed. */
const MIN_SPREAD = 0.29;
/** Residuals looked at for the spread; more change it little. Chosen. */
const MOST_SAMPLES = 400;

/** Estimates the spread of residuals; keeps its buffer between calls. */
export class ResidualSpread {
  private readonly buffer = new Float32Array(2 * MOST_SAMPLES);

  /** Standard deviation of the bulk of the residuals, from the median of their sizes over evenly picked ones; NaN ones are passed over. */
  of(residual: Float32Array, count: number): number {
    // An odd step, so that it does not stay in the same columns of a mask whose rows are evenly long.
    const step = Math.max(1, Math.floor(count / MOST_SAMPLES)) | 1;
    let kept = 0;
    for (let k = 0; k < count && kept < this.buffer.length; k += step) {
      const r = Math.abs(residual[k] as number);
      if (!Number.isNaN(r)) this.buffer[kept++] = r;
    }
    if (kept === 0) return MIN_SPREAD;
    const sorted = this.buffer.subarray(0, kept).sort();
    return Math.max(MIN_SPREAD, MAD_TO_SD * (sorted[kept >> 1] as number));
  }
}

/** Weighs residuals: out = mask * robust weight, 0 for a NaN residual. Lists have `count` entries. */
export function robustWeights(
  kind: RobustKind,
  residual: Float32Array,
  spread: number,
  mask: Float32Array,
  count: number,
  out: Float32Array,
): void {
  const limit = (kind === 'huber' ? HUBER_TUNING : TUKEY_TUNING) * spread;
  for (let k = 0; k < count; k++) {
    const r = Math.abs(residual[k] as number);
    const m = mask[k] as number;
    if (r <= limit) {
      const u = r / limit;
      out[k] = kind === 'huber' ? m : m * (1 - u * u) * (1 - u * u);
    } else {
      out[k] = kind === 'huber' && r > limit ? (m * limit) / r : 0;
    }
  }
}

/** Slope of Tukey's influence function at a residual, 1 in the middle, 0 outside: what a weighted fit's error is measured with. */
export function tukeySlope(residual: number, spread: number): number {
  const u = residual / (TUKEY_TUNING * spread);
  return u * u < 1 ? (1 - u * u) * (1 - 5 * u * u) : 0;
}
