import type { DoseLog } from '../../dose/dose-log.ts';
import { currentPrescription } from '../../dose/prescription.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';

/** Whether the plan that holds, or anything told from `from` on, is invented. */
export function isInvented(log: DoseLog, from: CalendarDay): boolean {
  const told = [
    log.prescriptions,
    log.steps,
    log.redFlags,
    log.clearances,
    log.reports,
    log.checkIns,
    log.selfChecks,
    log.angleMarks,
  ].flat();
  return (
    currentPrescription(log.prescriptions)?.origin === 'example' ||
    told.some(({ origin, day }) => origin === 'example' && day >= from)
  );
}
