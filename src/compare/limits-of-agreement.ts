import { mean, sampleStandardDeviation } from 'simple-statistics';
import { fail, ok, type Result } from '../result.ts';
import { studentT95 } from './student-t.ts';

/** Two-sided 95 % of a normal distribution. */
const Z95 = 1.96;
/** A standard deviation needs two values. */
const LEAST_DIFFERENCES = 2;

export type Interval = readonly [low: number, high: number];

/** How two ways of measuring agree; all in the unit of the differences. */
export interface LimitsOfAgreement {
  readonly n: number;
  /** Mean difference. */
  readonly bias: number;
  /** Standard deviation of the differences (n - 1). */
  readonly deviation: number;
  /** Bias -+ 1.96 standard deviations. */
  readonly limits: Interval;
  /** 95 % confidence interval of the bias, and of each limit. */
  readonly biasInterval: Interval;
  readonly lowerInterval: Interval;
  readonly upperInterval: Interval;
}

export interface TooFewDifferences {
  readonly kind: 'too-few-differences';
  readonly found: number;
  readonly needed: number;
}

/**
 * Bias and 95 % limits of agreement: b -+ 1.96 s, with standard errors sqrt(s^2 / n) of b and sqrt(3 s^2 / n) of a limit, and Student's t of n - 1.
 * It takes the differences as independent: several of one person make all intervals too narrow.
 * @param differences one way minus the other, one a subject
 * Source: Bland JM, Altman DG 1986, Lancet 1:307-310; 1.96 for its 2 as in Bland and Altman 1999, Stat Methods Med Res 8:135-160.
 */
export function limitsOfAgreement(differences: readonly number[]): Result<LimitsOfAgreement, TooFewDifferences> {
  const n = differences.length;
  if (n < LEAST_DIFFERENCES) return fail({ kind: 'too-few-differences', found: n, needed: LEAST_DIFFERENCES });
  const all = [...differences];
  const bias = mean(all);
  const deviation = sampleStandardDeviation(all);
  const t = studentT95(n - 1);
  const around = (centre: number, reach: number): Interval => [centre - reach, centre + reach];
  const limits = around(bias, Z95 * deviation);
  const ofLimit = t * deviation * Math.sqrt(3 / n);
  return ok({
    n,
    bias,
    deviation,
    limits,
    biasInterval: around(bias, (t * deviation) / Math.sqrt(n)),
    lowerInterval: around(limits[0], ofLimit),
    upperInterval: around(limits[1], ofLimit),
  });
}
