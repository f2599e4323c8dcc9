import { isObject } from './is-object.ts';

/** From database version 3 to 4: repetitions say how long a forefoot stayed up and when it sank. Before, no exercise had either. */

// What does not look like a row is left as it is: reading it says what is wrong with it.
const withStand = (rep: unknown): unknown => (isObject(rep) ? { ...rep, upMs: null, sankAfterMs: null } : rep);

/** A row of `reps`. */
export const withStandRow = (row: unknown): unknown =>
  isObject(row) && 'rep' in row ? { ...row, rep: withStand(row.rep) } : row;

/** A row of `results`. */
export function withStandsRow(row: unknown): unknown {
  if (!isObject(row) || !('result' in row) || !isObject(row.result)) return row;
  const { result } = row;
  return 'reps' in result && Array.isArray(result.reps)
    ? { ...row, result: { ...result, reps: result.reps.map(withStand) } }
    : row;
}
