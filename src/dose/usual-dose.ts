import { sameDose } from './dose.ts';
import type { PrescribedExercise } from './prescribed-exercise.ts';
import { startingDose } from './starting-doses.ts';

/** `usual`: as offered. `moved`: as offered, but for the steps that the rule or the person took since. `decided`: somebody decided on it. */
export type Standing = 'usual' | 'moved' | 'decided';

/** Where the dose of a line comes from. */
export function standingOfDose({ id, exercise, sides, start, basis }: PrescribedExercise): Standing {
  if (basis !== 'common-practice') return 'decided';
  return sameDose(start, startingDose(exercise, id, sides).start) ? 'usual' : 'moved';
}
