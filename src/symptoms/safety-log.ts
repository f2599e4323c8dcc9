import type { CheckIn } from './check-in.ts';
import type { Clearance } from './clearance.ts';
import type { RedFlagAnswers } from './red-flags.ts';
import type { SelfCheck } from './self-check.ts';
import type { SymptomReport } from './symptom-report.ts';

/** What has been told so far, in any order: all that decides about stopping. */
export interface SafetyLog {
  readonly redFlags: readonly RedFlagAnswers[];
  readonly clearances: readonly Clearance[];
  readonly reports: readonly SymptomReport[];
  readonly checkIns: readonly CheckIn[];
  readonly selfChecks: readonly SelfCheck[];
}
