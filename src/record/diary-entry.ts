import type { HandSet, SetLink } from '../dose/done-set.ts';
import type { DoseStep } from '../dose/dose-step.ts';
import type { Prescription } from '../dose/prescription.ts';
import type { Removal } from '../dose/removal.ts';
import type { AngleMark } from '../symptoms/angle-mark.ts';
import type { CheckIn } from '../symptoms/check-in.ts';
import type { Clearance } from '../symptoms/clearance.ts';
import type { RedFlagAnswers } from '../symptoms/red-flags.ts';
import type { SelfCheck } from '../symptoms/self-check.ts';
import type { SymptomReport } from '../symptoms/symptom-report.ts';

/** Whatever is kept of somebody's days besides the measured sets: one table, since all are immutable and known by their id. */
export type DiaryEntry =
  | Prescription
  | DoseStep
  | HandSet
  | SetLink
  | SymptomReport
  | CheckIn
  | RedFlagAnswers
  | Clearance
  | SelfCheck
  | AngleMark
  | Removal;
