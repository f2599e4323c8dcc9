import { addDays, type CalendarDay } from './calendar-day.ts';
import { type MayExercise, mayExercise } from './may-exercise.ts';
import type { SafetyLog } from './safety-log.ts';

/**
 * A stop told on a day that is yet to come still holds: the clock was ahead, or somebody travelled. Chosen: a wrong clock is noticed within a week, and a
 * date further off must not keep somebody from exercising for a year.
 */
const AHEAD_DAYS = 7;

/**
 * Whether a set may be started now. As `mayExercise` says of today, and of the days ahead that entries may have come to stand on: setting the clock back takes
 * no stop away.
 */
export function gateNow(log: SafetyLog, day: CalendarDay): MayExercise {
  const now = mayExercise(log, day);
  return now.kind === 'stopped' ? now : mayExercise(log, addDays(day, AHEAD_DAYS));
}
