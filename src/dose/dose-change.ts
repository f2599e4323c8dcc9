import { type Dose, type DoseLimits, sameDose, withinLimits } from './dose.ts';
import type { PrescribedExercise } from './prescribed-exercise.ts';
import type { DoseChange, ProgressionRule } from './progression-rule.ts';

const changed = (dose: Dose, { field, by }: DoseChange, limits: DoseLimits): Dose =>
  withinLimits({ ...dose, [field]: dose[field] + by }, limits);

/** One step: the first change that has room left. The same dose when none has. */
export const steppedUp = (dose: Dose, { steps, limits }: ProgressionRule): Dose =>
  steps.map((step) => changed(dose, step, limits)).find((next) => !sameDose(next, dose)) ?? dose;

/** What was gained last above the start goes first, no further than the start; only then below it. The same dose at the least. */
export function steppedBack(dose: Dose, { start, progression: { steps, limits } }: PrescribedExercise): Dose {
  const downTo = (least: Dose) => (step: DoseChange) =>
    changed(dose, { field: step.field, by: -Math.min(step.by, dose[step.field] - least[step.field]) }, limits);
  const least = { setsADay: limits.setsADay.least, repsASet: limits.repsASet.least, holdS: limits.holdS.least };
  const backwards = steps.toReversed();
  const gained = backwards.filter(({ field }) => dose[field] > start[field]).map(downTo(start));
  return [...gained, ...backwards.map(downTo(least))].find((next) => !sameDose(next, dose)) ?? dose;
}
