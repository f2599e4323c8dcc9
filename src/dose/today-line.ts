import type { Side } from '../pose/landmarks.ts';
import type { CalendarDay } from '../symptoms/calendar-day.ts';
import { byMoment } from '../symptoms/entry.ts';
import { type DoneSet, isOf, wasBegunFor } from './done-set.ts';
import type { Dose } from './dose.ts';
import type { DoseLog } from './dose-log.ts';
import { currentDose } from './dose-step.ts';
import { nextDueDay } from './due-days.ts';
import { type Clock, localTime } from './local-time.ts';
import type { PrescribedExercise } from './prescribed-exercise.ts';
import type { Prescription } from './prescription.ts';
import { freeFromMs, type Rested } from './rest.ts';
import { leastGapMs, type WakingDay } from './spread.ts';

/**
 * - `now`: a set may start. `later`: it is to wait until `mayStartMs`.
 * - `done`: all sets of today. `rest-day`: none is due before `nextDay`. `day-over`: what is missing would come too late in the day.
 * - `symptoms-rose`: a set of today was ended because symptoms rose, with however many repetitions: no other one today.
 * - `too-strong`: symptoms were last told above the limit. `stopped`: see the gate.
 */
export type LineState = 'now' | 'later' | 'done' | 'rest-day' | 'day-over' | 'symptoms-rose' | 'too-strong' | 'stopped';

/** One line of the prescription for one leg, today. */
export interface TodayLine {
  readonly item: PrescribedExercise;
  readonly side: Side;
  readonly dose: Dose;
  readonly state: LineState;
  readonly setsDue: number;
  /** May be more than were due. */
  readonly done: readonly DoneSet[];
  /** ms since 1970; null unless `now` or `later`. */
  readonly mayStartMs: number | null;
  /** The day on which it is due next when today is a rest day; else null. */
  readonly nextDay: CalendarDay | null;
}

interface Asked {
  readonly prescription: Prescription;
  readonly item: PrescribedExercise;
  readonly side: Side;
  readonly log: DoseLog;
  readonly clock: Clock;
  readonly day: CalendarDay;
  readonly waking: WakingDay;
  readonly stopped: boolean;
  readonly rested: Rested;
}

export function todayLine({ prescription, item, side, log, clock, day, waking, stopped, rested }: Asked): TodayLine {
  const sets = log.done.filter((set) => set.side === side && isOf(item, set));
  const done = sets.filter((set) => set.day === day);
  const dose = currentDose(prescription, item, log.steps, day);
  const dueDay = nextDueDay(
    item.daysAWeek,
    sets.map((set) => set.day),
    day,
  );
  const setsDue = dueDay === day ? dose.setsADay : 0;
  const line = { item, side, dose, setsDue, done, mayStartMs: null, nextDay: null };
  if (dueDay !== day) return { ...line, state: 'rest-day', nextDay: dueDay };
  if (roseToday(item, side, log, day)) return { ...line, state: 'symptoms-rose' };
  if (done.length >= setsDue) return { ...line, state: 'done' };
  if (stopped) return { ...line, state: 'stopped' };
  if (tooStrong(item, log, day)) return { ...line, state: 'too-strong' };

  const freeMs = freeFromMs(sets, leastGapMs(item, dose.setsADay, waking), clock.nowMs, rested);
  if (freeMs <= clock.nowMs) return { ...line, state: 'now', mayStartMs: clock.nowMs };
  const free = localTime({ ...clock, nowMs: freeMs });
  if (free.day !== day || free.minute >= waking.toMinute) return { ...line, state: 'day-over' };
  return { ...line, state: 'later', mayStartMs: freeMs };
}

/** Whether a set of today, also one without a whole repetition, was ended because symptoms rose. */
const roseToday = (item: PrescribedExercise, side: Side, { done }: DoseLog, day: CalendarDay): boolean =>
  done.some((set) => set.day === day && set.side === side && set.glide?.stopped === 'symptoms' && wasBegunFor(item, set));

/** Whether one more set than due may be begun. Not of glides: too many can make nerve pain worse. */
export const mayDoMore = ({ state, item }: Pick<TodayLine, 'state' | 'item'>): boolean =>
  state === 'done' && item.exercise !== 'nerve-glide';

/** Whether somebody who asks for the line's next set is shown it: also early, which is their own choice, but no glides beyond the day's. */
export const isShown = (line: Pick<TodayLine, 'state' | 'item'>): boolean =>
  line.state !== 'symptoms-rose' && (line.state !== 'done' || mayDoMore(line));

/** Whether what was last told today lies above the limit. */
function tooStrong(item: PrescribedExercise, { reports, checkIns }: DoseLog, day: CalendarDay): boolean {
  const told = [...reports, ...checkIns].filter((each) => each.day === day).toSorted(byMoment);
  const last = told.findLast(({ intensity }) => intensity !== 'not-answered');
  return last !== undefined && Number(last.intensity) > item.symptomLimit;
}
