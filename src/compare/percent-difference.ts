/** A value beside another; only for what has a true zero: counts and times, never angles. */
export interface PercentDifference {
  readonly value: number;
  readonly reference: number;
  /** 100 (value - reference) / reference; null when the reference is 0. */
  readonly percent: number | null;
}

/**
 * How much more or less, in percent of the reference. Formulas of this kind differ; this one names its reference, as Bishop et al. 2018 ask for
 * (Strength Cond J 40(4):1-6).
 * @param value,reference same unit, from 0 on
 */
export function percentDifference(value: number, reference: number): PercentDifference {
  if (!(value >= 0 && reference >= 0))
    throw new Error(`percentDifference requires values from 0 on, got ${value} and ${reference}`);
  return { value, reference, percent: reference === 0 ? null : (100 * (value - reference)) / reference };
}
