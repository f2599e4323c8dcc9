import type { SeenBy } from '../exercises/exercise.ts';
import type { Side } from '../pose/landmarks.ts';
import { median } from '../signal/median.ts';
import type { CalendarDay } from '../symptoms/calendar-day.ts';
import { type Deg, deg } from '../units.ts';
import { type DoneSet, isOf } from './done-set.ts';
import type { PrescribedExercise } from './prescribed-exercise.ts';
import { type AgainstTarget, againstTarget, rangeBandOf } from './range-progress.ts';

/** How far one leg went in one set. */
export interface RangeSet {
  readonly id: string;
  readonly day: CalendarDay;
  /** ISO 8601, UTC. */
  readonly endedAt: string;
  /** Median of the complete repetitions, and how many there were. */
  readonly rangeDeg: Deg;
  readonly reps: number;
  readonly seenBy: SeenBy;
  /** Half the width of the 95 % band about it: measurement error alone. */
  readonly bandDeg: Deg;
  readonly target: AgainstTarget;
}

/**
 * The measured sets of one line with one leg, in order of time.
 * @param sets of the days looked at
 */
export function rangeSets(item: PrescribedExercise, side: Side, sets: readonly DoneSet[]): readonly RangeSet[] {
  const { exercise, target } = item;
  const measured = sets.flatMap((set): readonly RangeSet[] => {
    const middle = set.side === side && isOf(item, set) ? median(set.rangesDeg) : null;
    if (middle === null) return [];
    const { id, day, endedAt, rangesDeg, seenBy = 'pose' } = set;
    const rangeDeg = deg(middle);
    const bandDeg = rangeBandOf(exercise, seenBy);
    return [
      { id, day, endedAt, rangeDeg, reps: rangesDeg.length, seenBy, bandDeg, target: againstTarget(target, rangeDeg, bandDeg) },
    ];
  });
  return measured.toSorted((a, b) => (a.endedAt < b.endedAt ? -1 : 1));
}
