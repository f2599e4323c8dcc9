/** Two-sided 95 % of a normal distribution. */
const Z95 = 1.96;

/**
 * Minimal detectable change: two measurements of an unchanged person differ by less than this in 95 of 100 cases. MDC95 = 1.96 sqrt(2) SEM.
 * @param standardError SEM of one measurement; the result has its unit
 * Source: Weir JP 2005, J Strength Cond Res 19:231-240.
 */
export const minimalDetectableChange = (standardError: number): number => Z95 * Math.SQRT2 * standardError;
