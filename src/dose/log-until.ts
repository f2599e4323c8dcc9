import type { CalendarDay } from '../symptoms/calendar-day.ts';
import type { Entry } from '../symptoms/entry.ts';
import type { DoneSet } from './done-set.ts';
import type { DoseLog } from './dose-log.ts';

/** The log as it stood at a moment: what was told by then, and the sets that had ended. @param moment ISO 8601, UTC */
export const logUntil = (log: DoseLog, moment: string): DoseLog =>
  cut(
    log,
    ({ at }) => at <= moment,
    ({ endedAt }) => endedAt <= moment,
  );

/**
 * The log as it stands now. What was told on the day itself counts however late: where the clock was set back, it is no less done.
 * @param moment ISO 8601, UTC
 */
export const logUntilNow = (log: DoseLog, moment: string, day: CalendarDay): DoseLog =>
  cut(
    log,
    (entry) => entry.at <= moment || entry.day <= day,
    (set) => set.endedAt <= moment || set.day <= day,
  );

/** The log as it stood when a day was over. */
export const logUntilDay = (log: DoseLog, last: CalendarDay): DoseLog => {
  const isBefore = ({ day }: { readonly day: CalendarDay }) => day <= last;
  return cut(log, isBefore, isBefore);
};

function cut(log: DoseLog, isTold: (entry: Entry) => boolean, isDone: (set: DoneSet) => boolean): DoseLog {
  return {
    redFlags: log.redFlags.filter(isTold),
    clearances: log.clearances.filter(isTold),
    reports: log.reports.filter(isTold),
    checkIns: log.checkIns.filter(isTold),
    selfChecks: log.selfChecks.filter(isTold),
    prescriptions: log.prescriptions.filter(isTold),
    steps: log.steps.filter(isTold),
    angleMarks: log.angleMarks.filter(isTold),
    removals: log.removals.filter(isTold),
    done: log.done.filter(isDone),
  };
}
