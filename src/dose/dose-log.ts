import type { AngleMark } from '../symptoms/angle-mark.ts';
import type { SafetyLog } from '../symptoms/safety-log.ts';
import type { DoneSet } from './done-set.ts';
import type { DoseStep } from './dose-step.ts';
import type { Prescription } from './prescription.ts';
import type { Removal } from './removal.ts';

/** All that decides about today and the next dose, in any order. */
export interface DoseLog extends SafetyLog {
  readonly prescriptions: readonly Prescription[];
  readonly steps: readonly DoseStep[];
  readonly done: readonly DoneSet[];
  /** They decide about no dose, but are told of beside what does. */
  readonly angleMarks: readonly AngleMark[];
  /** Sets that were taken back, as far as anybody should know that there were some. */
  readonly removals: readonly Removal[];
}
