import { mean } from 'simple-statistics';
import { limitsOfAgreement } from '../../src/compare/limits-of-agreement.ts';

/** How measured values agree with true ones; same unit as the errors. */
export interface Agreement {
  readonly n: number;
  readonly meanAbsolute: number;
  readonly bias: number;
  /** The largest error without its sign. */
  readonly worst: number;
  /** Bland-Altman 95 % limits; null for fewer than two errors. */
  readonly limits: readonly [number, number] | null;
}

/** @param errors measured minus true, one a repetition; null when there are none */
export function agreementOf(errors: readonly number[]): Agreement | null {
  if (errors.length === 0) return null;
  const absolute = errors.map(Math.abs);
  const agreement = limitsOfAgreement(errors);
  return {
    n: errors.length,
    meanAbsolute: mean(absolute),
    bias: mean([...errors]),
    worst: Math.max(...absolute),
    limits: agreement.ok ? agreement.value.limits : null,
  };
}
