import { median } from './median.ts';

/** Median of |x| of a normal distribution, in standard deviations. */
const MEDIAN_OF_NORMAL = 0.6745;
/** Weights of the second and of the fourth difference. */
const SECOND = [1, -2, 1] as const;
const FOURTH = [1, -4, 6, -4, 1] as const;

/**
 * Standard deviation of what changes from frame to frame faster than a joint can: what white noise of that size would leave in the series'
 * differences. Second differences take the turning back of a quick tap for noise (four taps a second of 14 degrees at 30 frames a second: 1.4
 * degrees), fourth ones take a tremor near half the frame rate for more than it is; the smaller answer is nearer to the truth.
 * @param values one a frame; null where not measured: differences across a hole are left out
 * @returns same unit; 0 when nothing can be said
 */
export const noiseLevel = (values: readonly (number | null)[]): number =>
  Math.min(scatterOf(values, SECOND), scatterOf(values, FOURTH));

function scatterOf(values: readonly (number | null)[], weights: readonly number[]): number {
  const differences: number[] = [];
  for (let i = 0; i + weights.length <= values.length; i++) {
    let difference: number | null = 0;
    for (let k = 0; k < weights.length && difference !== null; k++) {
      const value = values[i + k] ?? null;
      difference = value === null ? null : difference + value * (weights[k] as number);
    }
    if (difference !== null) differences.push(Math.abs(difference));
  }
  return (median(differences) ?? 0) / (MEDIAN_OF_NORMAL * Math.hypot(...weights));
}
