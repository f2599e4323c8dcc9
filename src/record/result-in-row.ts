import type { SetResult } from '../measure/set-result.ts';
import { curveOf, isCurveSteps } from './file/curve-steps.ts';
import type { FileResult } from './file/file-set.ts';

/**
 * A result as it lies in the database. One that came in a record keeps its curve as steps, as precise as the file was: a third of the bytes to write, and under
 * the lock of those to seal.
 */
export type ResultInRow = SetResult | FileResult;

/** The result with a curve of times and angles. What has neither kind of curve is given back as it is, for the reader to call damaged. */
export function resultOfRow(result: ResultInRow): unknown {
  const curve: unknown = (result as ResultInRow | null)?.curve;
  return isCurveSteps(curve) ? { ...result, curve: curveOf(curve) } : result;
}
