import type { Side } from '../pose/landmarks.ts';
import { addDays, type CalendarDay } from '../symptoms/calendar-day.ts';
import type { SymptomShift } from '../symptoms/symptom-shift.ts';
import { type DaySymptoms, shiftOverDays, symptomsByDay } from '../symptoms/symptoms-by-day.ts';
import { type DoneSet, isOf } from './done-set.ts';
import type { DoseLog } from './dose-log.ts';
import { currentDose } from './dose-step.ts';
import { nextDueDay } from './due-days.ts';
import { type GlideSet, glideSets } from './glide-sets.ts';
import { asLinesNow, lineNow } from './lines-now.ts';
import type { PrescribedExercise } from './prescribed-exercise.ts';
import { currentPrescription } from './prescription.ts';
import { type RangeProgress, rangeProgress } from './range-progress.ts';

/** One day of one line and leg. */
export interface DayDone {
  readonly day: CalendarDay;
  /** By the prescription and the dose that held on this day; 0 on rest days and before there was one. */
  readonly setsDue: number;
  readonly setsDone: number;
  readonly reps: number;
}

/** One line of the prescription for one leg over the days looked at: what is drawn, and what one sentence is made of. */
export interface LineProgress {
  readonly item: PrescribedExercise;
  readonly side: Side;
  readonly days: readonly DayDone[];
  readonly setsDue: number;
  /** No more counted for a day than were due on it, so that a busy day does not make up for a missed one. */
  readonly setsDoneOfDue: number;
  readonly daysDone: number;
  /** Null for exercises that the camera does not measure, or did not in these days. */
  readonly range: RangeProgress | null;
  /** Measured nerve glides, in order of time; none of other exercises. */
  readonly glides: readonly GlideSet[];
}

export interface Progress {
  readonly from: CalendarDay;
  readonly to: CalendarDay;
  readonly lines: readonly LineProgress[];
  /** Days on which something was told, oldest first. */
  readonly symptoms: readonly DaySymptoms[];
  /** From the first of them to the last. */
  readonly shift: SymptomShift;
}

/** The last days up to this one. Null without a prescription. @param count days, this one included: 7, 14, 28 */
export function progress(log: DoseLog, to: CalendarDay, count: number): Progress | null {
  const prescription = currentPrescription(log.prescriptions);
  if (!prescription) return null;
  const from = addDays(to, 1 - count);
  const within = ({ day }: { readonly day: CalendarDay }) => day >= from && day <= to;
  const days = Array.from({ length: count }, (_, i) => addDays(from, i));
  const symptoms = symptomsByDay(log).filter(within);
  const whole: WholeLog = { log, nameNow: lineNow(prescription, log.prescriptions) };
  const asNow = asLinesNow(log, prescription);
  const lines = prescription.items.flatMap((item) =>
    item.sides.map((side) => lineProgress({ item, side, log: asNow, whole }, days)),
  );
  return { from, to, lines, symptoms, shift: shiftOverDays(symptoms) };
}

/** All that was told, however the lines were called. */
interface WholeLog {
  readonly log: DoseLog;
  readonly nameNow: ReturnType<typeof lineNow>;
}

interface Line {
  readonly item: PrescribedExercise;
  readonly side: Side;
  /** As the lines of this plan see it. */
  readonly log: DoseLog;
  readonly whole: WholeLog;
}

function lineProgress(line: Line, days: readonly CalendarDay[]): LineProgress {
  const { item, side, log } = line;
  const sets = log.done.filter((set) => set.side === side && isOf(item, set));
  const done = days.map((day): DayDone => {
    const ofDay = sets.filter((set) => set.day === day);
    return {
      day,
      setsDue: setsDue(line, day),
      setsDone: ofDay.length,
      reps: ofDay.reduce((sum, { reps }) => sum + reps, 0),
    };
  });
  const seen = new Set(days);
  const own = sets.filter(({ day }) => seen.has(day));
  const other = log.done.filter((set) => set.exercise === item.exercise && set.side !== side && seen.has(set.day));
  return {
    item,
    side,
    days: done,
    setsDue: done.reduce((sum, each) => sum + each.setsDue, 0),
    setsDoneOfDue: done.reduce((sum, each) => sum + Math.min(each.setsDone, each.setsDue), 0),
    daysDone: done.filter(({ setsDone }) => setsDone > 0).length,
    range: rangeProgress(item.exercise, item.target, own, other),
    glides: glideSets(own, log),
  };
}

/** The sets due on a day, by the prescription that held then, under whatever id it had the line. */
function setsDue({ item: { id }, side, whole: { log, nameNow } }: Line, day: CalendarDay): number {
  const held = currentPrescription(log.prescriptions.filter((each) => each.day <= day));
  const item = held?.items.find((each) => each.sides.includes(side) && nameNow(each.id, side) === id);
  if (!held || !item) return 0;
  const isDone = (set: DoneSet) => set.side === side && isOf(item, set) && set.day <= day;
  const doneDays = asLinesNow(log, held).done.flatMap((set) => (isDone(set) ? [set.day] : []));
  return nextDueDay(item.daysAWeek, doneDays, day) === day ? currentDose(held, item, log.steps, day).setsADay : 0;
}
