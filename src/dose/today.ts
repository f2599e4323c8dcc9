import { type CalendarDay, daysBetween } from '../symptoms/calendar-day.ts';
import { gateNow } from '../symptoms/gate-now.ts';
import type { MayExercise } from '../symptoms/may-exercise.ts';
import { type QuestionsReason, questionsDue } from '../symptoms/questions-due.ts';
import type { SelfCheckId } from '../symptoms/self-check.ts';
import { selfChecksDue } from '../symptoms/self-check-change.ts';
import type { DoseLog } from './dose-log.ts';
import { asLinesNow } from './lines-now.ts';
import { type Clock, localTime } from './local-time.ts';
import { logUntilNow } from './log-until.ts';
import { currentPrescription, type Prescription } from './prescription.ts';
import { NOT_COUNTED, type Rested } from './rest.ts';
import { WAKING_DAY, type WakingDay } from './spread.ts';
import { type TodayLine, todayLine } from './today-line.ts';

/** How many days after the last sets "how was it afterwards?" is still asked. Chosen: later, nobody remembers. */
const CHECK_IN_WITHIN_DAYS = 3;

/** The day in one glance. */
export interface Today {
  readonly day: CalendarDay;
  readonly prescription: Prescription;
  /** Whether sets may be started at all. */
  readonly gate: MayExercise;
  /** Why the red-flag questions come before the next set; empty: they need not. */
  readonly questions: readonly QuestionsReason[];
  /** The day that the check-in is to look back on; null when it is answered or there is none. */
  readonly checkInAbout: CalendarDay | null;
  readonly selfChecks: readonly SelfCheckId[];
  /** One for each line and leg, in the order of the prescription. */
  readonly lines: readonly TodayLine[];
  /** The line whose next set comes first, now or later; null when none comes today. */
  readonly next: TodayLine | null;
}

/**
 * What is due, done and next. Null without a prescription. What is told or done after `nowMs` is not looked at.
 * @param rested how long ago sets ended, where somebody has counted it
 */
export function today(whole: DoseLog, clock: Clock, rested: Rested = NOT_COUNTED, waking: WakingDay = WAKING_DAY): Today | null {
  const { day } = localTime(clock);
  const told = logUntilNow(whole, new Date(clock.nowMs).toISOString(), day);
  const prescription = currentPrescription(told.prescriptions);
  if (!prescription) return null;
  const log = asLinesNow(told, prescription);
  const gate = gateNow(asLinesNow(whole, prescription), day);
  const lines = prescription.items.flatMap((item) =>
    item.sides.map((side) =>
      todayLine({ prescription, item, side, log, clock, day, waking, stopped: gate.kind === 'stopped', rested }),
    ),
  );
  const waiting = lines.filter(({ mayStartMs }) => mayStartMs !== null);
  const next = waiting.toSorted((a, b) => Number(a.mayStartMs) - Number(b.mayStartMs))[0] ?? null;
  return {
    day,
    prescription,
    gate,
    questions: questionsDue(log, day),
    checkInAbout: checkInAbout(log, day),
    selfChecks: selfChecksDue(prescription.selfChecks, log.selfChecks, day),
    lines,
    next,
  };
}

function checkInAbout({ done, checkIns }: DoseLog, day: CalendarDay): CalendarDay | null {
  const last = done
    .flatMap((set) => (set.day < day && set.reps > 0 ? [set.day] : []))
    .toSorted()
    .at(-1);
  if (last === undefined || daysBetween(last, day) > CHECK_IN_WITHIN_DAYS) return null;
  return checkIns.some(({ aboutDay }) => aboutDay === last) ? null : last;
}
