import { rangeChangeOf } from '../../compare/range-error.ts';
import { localTime } from '../../dose/local-time.ts';
import { exerciseOf } from '../../exercises/catalogue.ts';
import type { MeasuredRep } from '../../measure/set-result.ts';
import type { Side } from '../../pose/landmarks.ts';
import { median } from '../../signal/median.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { type Deg, deg } from '../../units.ts';
import { keptReps } from '../parts/kept-reps.ts';
import type { ShownSet } from '../services.ts';

/**
 * How far each big toe lifted in a day's last measured set, deg: the median of what counted, or of what was too small to count. A side that was not measured is left out;
 * so is a film, which may show anybody on any day.
 * @param sets newest first
 */
export function toeLiftsOn(sets: readonly ShownSet[], day: CalendarDay, timeZone: string): Readonly<Partial<Record<Side, Deg>>> {
  const lifts: Partial<Record<Side, Deg>> = {};
  for (const set of sets) {
    if (set.exercise !== 'toe-lift' || set.source !== 'camera' || lifts[set.side] !== undefined) continue;
    if (localTime({ nowMs: Date.parse(set.startedAt), timeZone }).day !== day) continue;
    const reps = keptReps(set);
    const middle = (counted: readonly MeasuredRep[]) => median(counted.map((rep) => rep.rangeDeg as number));
    const lift = middle(reps.filter((rep) => rep.complete)) ?? middle(reps);
    if (lift !== null) lifts[set.side] = deg(lift);
  }
  return lifts;
}

/**
 * The answer that a measured lift speaks for; null: none. That a toe lifts as far as the other one does not say that it is as strong: that the finger tells.
 * @param own,other deg; `other` left out: not measured
 */
export function toeHint(own: Deg, other: Deg | undefined): 'cannot-lift' | 'easily-pushed-down' | null {
  if (own < exerciseOf('toe-lift').rule.leastDeg) return 'cannot-lift';
  return other !== undefined && other - own > rangeChangeOf('toe-lift', 'legs') ? 'easily-pushed-down' : null;
}
