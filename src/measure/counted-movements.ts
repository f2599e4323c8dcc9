import type { Exercise } from '../exercises/exercise.ts';
import { findMovements, type Movements, type RawAngle } from './movements.ts';
import { restBeforeReady } from './ready.ts';

/**
 * The movements that count: those whose peak comes once the set is ready. One that is under way by then begins from the rest that made the set ready, and is no
 * movement that the measurement broke into.
 * @param series one a sample; null where not measured
 * @param ready index of the sample from which movements count; null: none does
 * @param angleDeg the angle as stillness was judged by, one a sample
 */
export function countedMovements(
  series: readonly RawAngle[],
  exercise: Pick<Exercise, 'rule' | 'acceleration'>,
  ready: number | null,
  angleDeg: readonly (number | null)[],
): Movements {
  if (ready === null) return findMovements(series, exercise, null);
  const tMs = series.map((s) => s.tMs);
  const all = findMovements(series, exercise, restBeforeReady(tMs, angleDeg, exercise.rule, ready));
  return { ...all, found: all.found.filter((m) => m.peakMs >= (tMs[ready] as number)) };
}
