import type { CalendarDay } from '../symptoms/calendar-day.ts';
import { byMoment, type Entry } from '../symptoms/entry.ts';
import { type Dose, withinLimits } from './dose.ts';
import type { PrescribedExercise } from './prescribed-exercise.ts';
import type { Prescription } from './prescription.ts';

/** A change of one line's dose that was agreed to. The prescription itself stays as the therapist wrote it. */
export interface DoseStep extends Entry {
  readonly kind: 'dose-step';
  readonly prescriptionId: string;
  readonly itemId: string;
  readonly direction: 'up' | 'back';
  readonly from: Dose;
  readonly to: Dose;
  /** The day that the proposal judged, so that one day moves the dose once; null when somebody just chose to do less. */
  readonly aboutDay: CalendarDay | null;
  /** The kind of reason the proposal gave, or that somebody chose it. */
  readonly reason: string;
  readonly by: 'rule' | 'patient';
}

/**
 * The dose of a line on a day: the last step agreed to under this very prescription up to then, else what it starts with. A new prescription starts
 * anew. Never outside the therapist's limits, whatever a step says.
 */
export function currentDose(
  prescription: Pick<Prescription, 'id'>,
  item: PrescribedExercise,
  steps: readonly DoseStep[],
  day: CalendarDay,
): Dose {
  const last = steps
    .filter((step) => step.prescriptionId === prescription.id && step.itemId === item.id && step.day <= day)
    .toSorted(byMoment)
    .at(-1);
  return withinLimits(last?.to ?? item.start, item.progression.limits);
}
