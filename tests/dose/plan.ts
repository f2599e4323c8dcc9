import type { DoneSet } from '../../src/dose/done-set.ts';
import type { DoseLog } from '../../src/dose/dose-log.ts';
import type { DoseStep } from '../../src/dose/dose-step.ts';
import type { PrescribedExercise, PrescribedExerciseId } from '../../src/dose/prescribed-exercise.ts';
import type { Prescription } from '../../src/dose/prescription.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import { dayOf, entry, momentOf, safetyLog } from '../symptoms/told.ts';

export const itemId = (n: number): string => `00000000-0000-4000-a000-${String(n).padStart(12, '0')}`;

export const line = (exercise: PrescribedExerciseId, over: Partial<PrescribedExercise> = {}, n = 1): PrescribedExercise => ({
  ...startingDose(exercise, itemId(n), ['left']),
  ...over,
});

/** Prescribed on the first of May. */
export const prescription = (...items: readonly PrescribedExercise[]): Prescription => ({
  ...entry(1, 0),
  kind: 'prescription',
  by: { role: 'therapist', name: '' },
  revises: null,
  items,
  selfChecks: { checks: [], sides: ['left', 'right'], everyDays: 7 },
});

let made = 0;
/** A set of the line that ended on that day at that hour, UTC. */
export function done(item: PrescribedExercise, n: number, hour: number, over: Partial<DoneSet> = {}): DoneSet {
  made += 1;
  return {
    id: `00000000-0000-4000-b000-${String(made).padStart(12, '0')}`,
    exercise: item.exercise,
    side: 'left',
    itemId: item.id,
    day: dayOf(n),
    endedAt: momentOf(n, hour),
    reps: item.start.repsASet,
    rangesDeg: [],
    glide: null,
    ...over,
  };
}

export const step = (plan: Prescription, item: PrescribedExercise, n: number, over: Partial<DoseStep>): DoseStep => ({
  ...entry(n, 7),
  kind: 'dose-step',
  prescriptionId: plan.id,
  itemId: item.id,
  direction: 'up',
  from: item.start,
  to: item.start,
  aboutDay: dayOf(n - 1),
  reason: 'good',
  by: 'rule',
  ...over,
});

export const doseLog = (over: Partial<DoseLog> = {}): DoseLog => ({
  ...safetyLog(),
  prescriptions: [],
  steps: [],
  done: [],
  angleMarks: [],
  removals: [],
  ...over,
});
