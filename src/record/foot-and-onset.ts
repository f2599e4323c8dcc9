import { isObject } from './is-object.ts';

/**
 * From database version 2 to 3: repetitions say where the foot stood, results which knee limit held and where symptoms began. None of it was known
 * before, except the limit of a leg raise, which was 15 degrees for everybody.
 */

// What does not look like a row is left as it is: reading it says what is wrong with it.
const withFoot = (rep: unknown): unknown => (isObject(rep) ? { ...rep, footDeg: null, footUncertaintyDeg: null } : rep);

/** A row of `reps`. */
export const withFootRow = (row: unknown): unknown => (isObject(row) && 'rep' in row ? { ...row, rep: withFoot(row.rep) } : row);

/** A row of `results`. */
export function withOnsetRow(row: unknown): unknown {
  if (!isObject(row) || !('result' in row) || !isObject(row.result)) return row;
  const { result } = row;
  const reps = 'reps' in result && Array.isArray(result.reps) ? { reps: result.reps.map(withFoot) } : {};
  const kneeLimitDeg = 'exercise' in result && result.exercise === 'leg-raise' ? 15 : null;
  return { ...row, result: { ...result, ...reps, kneeLimitDeg, onset: null } };
}
