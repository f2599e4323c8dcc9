import { fail, ok, type Result } from '../result.ts';

export interface ReliabilityOutOfRange {
  readonly kind: 'reliability-out-of-range';
  readonly found: number;
}

/**
 * Standard error of measurement: how far one measurement of an unchanged person scatters about the true value. SEM = SD sqrt(1 - ICC).
 * @param deviation standard deviation of the subjects' values; the result has its unit
 * @param reliability intraclass correlation in [0, 1]; a negative one leaves nothing to tell from error
 * Source: Weir JP 2005, J Strength Cond Res 19:231-240.
 */
export function standardError(deviation: number, reliability: number): Result<number, ReliabilityOutOfRange> {
  if (!(deviation >= 0)) throw new Error(`standardError requires a standard deviation from 0 on, got ${deviation}`);
  if (!(reliability >= 0 && reliability <= 1)) return fail({ kind: 'reliability-out-of-range', found: reliability });
  return ok(deviation * Math.sqrt(1 - reliability));
}
