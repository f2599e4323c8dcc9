import type { CalendarDay } from '../symptoms/calendar-day.ts';
import type { DoseLog } from './dose-log.ts';
import { currentDose } from './dose-step.ts';
import { dueInWeek } from './due-days.ts';
import type { PrescribedExercise } from './prescribed-exercise.ts';
import type { Prescription } from './prescription.ts';
import { type Reminder, reminderUid } from './reminders.ts';
import { reminderMinutes, WAKING_DAY, type WakingDay } from './spread.ts';

/** For how long a file reminds. Chosen: to about the next visit, when the dose will have changed. */
export const REMIND_DAYS = 14;

/**
 * The reminders of a prescription with the dose of this day: one for each set of a line that is spread over the day, one for a line done at once.
 * @param words the texts of a reminder in the person's language
 */
export function prescriptionReminders(
  prescription: Prescription,
  log: Pick<DoseLog, 'steps'>,
  day: CalendarDay,
  words: (item: PrescribedExercise) => Pick<Reminder, 'summary' | 'description'>,
  waking: WakingDay = WAKING_DAY,
): readonly Reminder[] {
  return prescription.items.flatMap((item) => {
    const { setsADay } = currentDose(prescription, item, log.steps, day);
    return reminderMinutes(item.spread === 'day' ? setsADay : 1, waking).map((minute, i) => ({
      uid: reminderUid(item.id, i + 1),
      fromDay: day,
      days: REMIND_DAYS,
      inWeek: dueInWeek(item.daysAWeek, day),
      minute,
      ...words(item),
    }));
  });
}
