import type { Side } from '../pose/landmarks.ts';
import { median } from '../signal/median.ts';
import { type Deg, deg } from '../units.ts';
import type { AngleMark } from './angle-mark.ts';
import type { CalendarDay } from './calendar-day.ts';
import { byMoment } from './entry.ts';

/** How high a leg may be held in nerve glides, and when that was marked. */
export interface GlideLimit {
  /** Elevation of the leg, hip to ankle from the horizontal. */
  readonly elevationDeg: Deg;
  readonly day: CalendarDay;
}

/**
 * Where symptoms began when the straight leg was last raised: the median of the trials taken together with the newest mark, with its zero. Both zeros are
 * taken as the leg's elevation: lying, a leg rests on the horizontal but for a few degrees.
 * @param marks in any order, of both legs and any exercise
 * @returns null when it was never marked for this leg
 */
export function glideLimit(marks: readonly AngleMark[], side: Side): GlideLimit | null {
  const own = marks.filter((each) => each.exercise === 'leg-raise' && each.mark === 'first-symptom' && each.side === side);
  const newest = own.toSorted(byMoment).at(-1);
  if (!newest) return null;
  const together = own.filter(({ sessionId, zero }) => sessionId === newest.sessionId && zero === newest.zero);
  const middle = median(together.map(({ angleDeg }) => angleDeg));
  return middle === null ? null : { elevationDeg: deg(middle), day: newest.day };
}
