import type { CalendarDay } from '../symptoms/calendar-day.ts';
import { dayVerdict, type FlareReason } from './day-verdict.ts';
import { isOf } from './done-set.ts';
import type { DoseLog } from './dose-log.ts';
import { currentDose } from './dose-step.ts';
import { entriesOfDay } from './entries-of-day.ts';
import { asLinesNow } from './lines-now.ts';
import type { PrescribedExercise } from './prescribed-exercise.ts';
import { currentPrescription } from './prescription.ts';

/** A day whose sets flared. */
export interface FlareDay {
  readonly day: CalendarDay;
  /** The lines that were done and flared, each with its reason. At least one. */
  readonly lines: readonly { readonly item: PrescribedExercise; readonly reason: FlareReason }[];
}

/** The days from `from` to `to`, both included, on which a line was done and flared, oldest first; judged as docs/dose-rules.md says, by the plan of that day. */
export function flareDays(log: DoseLog, from: CalendarDay, to: CalendarDay): readonly FlareDay[] {
  const days = [...new Set(log.done.flatMap(({ day }) => (day >= from && day <= to ? [day] : [])))].toSorted();
  return days.flatMap((day) => {
    const held = currentPrescription(log.prescriptions.filter((each) => each.day <= day));
    const seen = held ? asLinesNow(log, held) : log;
    const { done } = entriesOfDay(seen, day);
    const lines = (held?.items ?? []).flatMap((item) => {
      if (!held || !done.some((set) => isOf(item, set))) return [];
      const verdict = dayVerdict(item, currentDose(held, item, log.steps, day), seen, day);
      return verdict.kind === 'flare' ? [{ item, reason: verdict.reason }] : [];
    });
    return lines.length > 0 ? [{ day, lines }] : [];
  });
}
