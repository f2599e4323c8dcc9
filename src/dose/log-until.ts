import type { DoseLog } from './dose-log.ts';

/** The log as it stood at a moment: what was told by then, and the sets that had ended. @param moment ISO 8601, UTC */
export function logUntil(log: DoseLog, moment: string): DoseLog {
  const told = <T extends { readonly at: string }>(entries: readonly T[]) => entries.filter(({ at }) => at <= moment);
  return {
    redFlags: told(log.redFlags),
    clearances: told(log.clearances),
    reports: told(log.reports),
    checkIns: told(log.checkIns),
    selfChecks: told(log.selfChecks),
    prescriptions: told(log.prescriptions),
    steps: told(log.steps),
    done: log.done.filter(({ endedAt }) => endedAt <= moment),
  };
}
