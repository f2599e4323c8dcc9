/** Two-sided 95 %. */
const CONFIDENCE = 0.95;
/** Halvings of the search interval; it ends far below the precision of a number. */
const HALVINGS = 200;

/**
 * Two-sided 95 % point of Student's t: a t-distributed value lies within -+ this in 95 of 100 cases.
 * @param degreesOfFreedom whole, at least 1
 * Source: the finite series of Abramowitz and Stegun 1964, 26.7.3 and 26.7.4 (from memory; checked against the printed table), searched by bisection.
 */
export function studentT95(degreesOfFreedom: number): number {
  if (!Number.isInteger(degreesOfFreedom) || degreesOfFreedom < 1)
    throw new Error(`studentT95 requires whole degrees of freedom from 1 on, got ${degreesOfFreedom}`);
  // The angle whose tangent is t / sqrt(n), so that the whole axis is searched.
  let low = 0;
  let high = Math.PI / 2;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (shareWithin(middle, degreesOfFreedom) < CONFIDENCE) low = middle;
    else high = middle;
  }
  return Math.tan(low) * Math.sqrt(degreesOfFreedom);
}

/** Share of the distribution within -+ tan(angle) sqrt(n). */
function shareWithin(angle: number, n: number): number {
  const odd = n % 2 === 1;
  const cos2 = Math.cos(angle) ** 2;
  let term = odd ? Math.cos(angle) : 1;
  let sum = n === 1 ? 0 : term;
  for (let k = odd ? 3 : 2; k <= n - 2; k += 2) {
    term *= ((k - 1) / k) * cos2;
    sum += term;
  }
  return odd ? (2 / Math.PI) * (angle + Math.sin(angle) * sum) : Math.sin(angle) * sum;
}
