import { DOSE_FIELDS, type DoseField } from '../../dose/dose.ts';
import type { DoseLog } from '../../dose/dose-log.ts';
import { currentDose } from '../../dose/dose-step.ts';
import type { PrescribedExercise, PrescribedExerciseId } from '../../dose/prescribed-exercise.ts';
import type { Prescription } from '../../dose/prescription.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';

/** What a plan under way holds, one line an exercise at most. */
export type PlanLines = Partial<Readonly<Record<PrescribedExerciseId, PrescribedExercise>>>;

/**
 * The lines of a plan to be revised, at the dose that holds today: a new plan starts where the old one stands, not where it began. A second line of the
 * same exercise is beyond this editor and left out.
 */
export const linesOf = (prescription: Prescription, { steps }: Pick<DoseLog, 'steps'>, day: CalendarDay): PlanLines =>
  Object.fromEntries(
    prescription.items
      .toReversed()
      .map((item) => [item.exercise, { ...item, start: currentDose(prescription, item, steps, day) }]),
  );

/** What is wrong with a line, first thing first; null: nothing. */
export function lineFault({ target, start, progression: { limits } }: PrescribedExercise): 'badRange' | 'badLimits' | null {
  if (target.kind === 'range' && target.fromDeg >= target.toDeg) return 'badRange';
  const outside = (field: DoseField) => start[field] < limits[field].least || start[field] > limits[field].most;
  return DOSE_FIELDS.some(outside) ? 'badLimits' : null;
}
