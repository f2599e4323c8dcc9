import { mean, sampleStandardDeviation } from 'simple-statistics';
import { type Deg, deg } from '../units.ts';

/** Several measurements of the same thing. */
export interface Trials {
  readonly count: number;
  readonly meanDeg: Deg;
  /** Sample standard deviation; null with one. */
  readonly spreadDeg: Deg | null;
}

/** @returns null without any */
export function trialsOf(values: readonly Deg[]): Trials | null {
  if (values.length === 0) return null;
  return {
    count: values.length,
    meanDeg: deg(mean([...values])),
    spreadDeg: values.length > 1 ? deg(sampleStandardDeviation([...values])) : null,
  };
}
