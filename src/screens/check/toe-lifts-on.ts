import { localTime } from '../../dose/local-time.ts';
import type { Side } from '../../pose/landmarks.ts';
import { median } from '../../signal/median.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { type Deg, deg } from '../../units.ts';
import { keptReps } from '../parts/kept-reps.ts';
import type { ShownSet } from '../services.ts';

/**
 * How far each big toe lifted in a day's last measured set, deg: the median of what counted. A side that was not measured is left out.
 * @param sets newest first
 */
export function toeLiftsOn(sets: readonly ShownSet[], day: CalendarDay, timeZone: string): Readonly<Partial<Record<Side, Deg>>> {
  const lifts: Partial<Record<Side, Deg>> = {};
  for (const set of sets) {
    if (set.exercise !== 'toe-lift' || lifts[set.side] !== undefined) continue;
    if (localTime({ nowMs: Date.parse(set.startedAt), timeZone }).day !== day) continue;
    const lift = median(keptReps(set).flatMap((rep) => (rep.complete ? [rep.rangeDeg as number] : [])));
    if (lift !== null) lifts[set.side] = deg(lift);
  }
  return lifts;
}
