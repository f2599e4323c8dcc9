import { DOSE_FIELDS, type DoseField } from '../../dose/dose.ts';
import type { PrescribedExercise } from '../../dose/prescribed-exercise.ts';

/** What is wrong with a line, first thing first; null: nothing. */
export function lineFault({ target, start, progression: { limits } }: PrescribedExercise): 'badRange' | 'badLimits' | null {
  if (target.kind === 'range' && target.fromDeg >= target.toDeg) return 'badRange';
  const outside = (field: DoseField) => start[field] < limits[field].least || start[field] > limits[field].most;
  return DOSE_FIELDS.some(outside) ? 'badLimits' : null;
}
