import { type Deg, deg } from '../units.ts';
import type { Verdict } from './range-difference.ts';

/** An angle with half the width of its 95 % interval. */
export interface DegFigure {
  readonly valueDeg: Deg;
  readonly uncertaintyDeg: Deg;
}

/** How far one measured angle differs from another. */
export interface FigureDifference {
  /** The first minus the second. */
  readonly differenceDeg: Deg;
  /** What it must exceed to be real: both errors together. */
  readonly limitDeg: Deg;
  readonly verdict: Verdict;
}

/**
 * Difference of two angles that each have an error of their own, independent of the other's: its 95 % interval has the root of the sum of the squares as
 * half width.
 */
export function figureDifference(own: DegFigure, reference: DegFigure): FigureDifference {
  const differenceDeg = deg(own.valueDeg - reference.valueDeg);
  const limitDeg = deg(Math.hypot(own.uncertaintyDeg, reference.uncertaintyDeg));
  return { differenceDeg, limitDeg, verdict: Math.abs(differenceDeg) > limitDeg ? 'real' : 'within-error' };
}
