import type { DoseLog } from '../../dose/dose-log.ts';
import { currentDose } from '../../dose/dose-step.ts';
import type { Prescription } from '../../dose/prescription.ts';
import { prescriptionReminders } from '../../dose/prescription-reminders.ts';
import { remindersFile } from '../../dose/reminders.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { saveFile } from '../parts/save-file.ts';
import { useWords } from '../words/words-context.tsx';
import { prescribedWords } from './prescribed-words.ts';

interface RemindersLinkProps {
  readonly prescription: Prescription;
  readonly log: DoseLog;
  readonly today: CalendarDay;
}

/** Hands the plan's times over as a calendar file, made in this page. */
export function RemindersLink({ prescription, log, today }: RemindersLinkProps) {
  const words = useWords();
  const { day, sides } = words;
  const save = () => {
    const reminders = prescriptionReminders(prescription, log, today, (item) => ({
      summary: day.reminder(
        prescribedWords(item.exercise, words).plural,
        item.sides.map((side) => sides[side].legLower).join(', '),
        currentDose(prescription, item, log.steps, today).repsASet,
      ),
      description: day.reminderAbout,
    }));
    saveFile(day.remindersFile, remindersFile(reminders, new Date().toISOString()), 'text/calendar');
  };
  return (
    <button type="button" className="button" onClick={save}>
      {day.reminders}
    </button>
  );
}
