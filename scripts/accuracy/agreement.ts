import { mean, sampleStandardDeviation } from 'simple-statistics';

/** How measured values agree with true ones; same unit as the errors. */
export interface Agreement {
  readonly n: number;
  readonly meanAbsolute: number;
  readonly bias: number;
  /** The largest error without its sign. */
  readonly worst: number;
  /** Bland-Altman 95 % limits: bias -+ 1.96 standard deviations; null for fewer than two errors. */
  readonly limits: readonly [number, number] | null;
}

/** Two-sided 95 % of a normal distribution. Bland and Altman 1986, Lancet 1:307. */
const Z95 = 1.96;

/** @param errors measured minus true, one a repetition; null when there are none */
export function agreementOf(errors: readonly number[]): Agreement | null {
  if (errors.length === 0) return null;
  const all = [...errors];
  const absolute = all.map(Math.abs);
  const bias = mean(all);
  const reach = all.length < 2 ? null : Z95 * sampleStandardDeviation(all);
  return {
    n: all.length,
    meanAbsolute: mean(absolute),
    bias,
    worst: Math.max(...absolute),
    limits: reach === null ? null : [bias - reach, bias + reach],
  };
}
