import { type RangeDifference, rangeDifference, type TooFewRepetitions } from '../compare/range-difference.ts';
import { rangeErrorOf } from '../compare/range-error.ts';
import type { ExerciseId, SeenBy } from '../exercises/exercise.ts';
import type { Result } from '../result.ts';
import { median } from '../signal/median.ts';
import type { CalendarDay } from '../symptoms/calendar-day.ts';
import { type Deg, deg } from '../units.ts';
import type { DoneSet } from './done-set.ts';
import type { PrescribedExerciseId, Target } from './prescribed-exercise.ts';

/** Two-sided 95 % of a normal distribution. */
const Z95 = 1.96;

/** The ranges of one leg on one day, all its sets together. */
export interface RangeDay {
  readonly day: CalendarDay;
  /** Median of the complete repetitions. */
  readonly rangeDeg: Deg;
  /** Half the width of the 95 % band about it: measurement error alone, 1.96 SEM of the exercise. */
  readonly bandDeg: Deg;
  readonly target: AgainstTarget;
}

/** Against the target range: below or above only when the whole band is. Null without such a target. */
export type AgainstTarget = 'below' | 'within' | 'above' | null;

export interface RangeProgress {
  /** How the newest of these sets was measured. Only sets measured so are compared. */
  readonly seenBy: SeenBy;
  /** Some of them, or of the other leg's, were measured in the other way. */
  readonly mixed: boolean;
  /** Oldest first; each tells of the sets measured in the newest way, where it has any. */
  readonly days: readonly RangeDay[];
  /** The last of these days against the first; null with less than two. */
  readonly change: Result<RangeDifference, TooFewRepetitions> | null;
  /** The last of these days against the last one of the other leg; null when that was not measured. */
  readonly otherSide: Result<RangeDifference, TooFewRepetitions> | null;
}

/**
 * How far one leg moved over days.
 * @param own,other sets of this exercise with this leg and with the other, of the days looked at
 * @returns null when it was not measured
 */
export function rangeProgress(
  exercise: PrescribedExerciseId,
  target: Target,
  own: readonly DoneSet[],
  other: readonly DoneSet[],
): RangeProgress | null {
  const measured = own.filter(({ rangesDeg }) => rangesDeg.length > 0);
  const newest = measured.toSorted((a, b) => (a.endedAt < b.endedAt ? -1 : 1)).at(-1);
  if (!newest) return null;
  const seenBy = wayOf(newest);
  const isLike = (set: DoneSet) => wayOf(set) === seenBy;
  const bandDeg = rangeBandOf(exercise, seenBy);
  // A day of the other way is told with the wider band of both.
  const unlikeBandDeg = deg(Math.max(rangeBandOf(exercise, 'pose'), rangeBandOf(exercise, 'stickers')));
  const alike = rangesByDay(own.filter(isLike));
  const likeDays = new Set(alike.map(({ day }) => day));
  const unlike = rangesByDay(own.filter((set) => !isLike(set) && !likeDays.has(set.day)));
  const bandOn = (day: CalendarDay): Deg => (likeDays.has(day) ? bandDeg : unlikeBandDeg);
  const days = [...alike, ...unlike].toSorted((a, b) => (a.day < b.day ? -1 : 1));
  const [first, last] = [alike[0], alike.at(-1)];
  if (!first || !last) return null;
  const others = rangesByDay(other.filter(isLike)).at(-1);
  return {
    seenBy,
    mixed: [...measured, ...other.filter(({ rangesDeg }) => rangesDeg.length > 0)].some((set) => !isLike(set)),
    days: days.map(({ day, ranges }) => {
      const rangeDeg = deg(median(ranges) ?? Number.NaN);
      return { day, rangeDeg, bandDeg: bandOn(day), target: againstTarget(target, rangeDeg, bandOn(day)) };
    }),
    change: first === last ? null : rangeDifference(exercise, 'occasions', last.ranges, first.ranges, seenBy),
    otherSide: others ? rangeDifference(exercise, 'legs', last.ranges, others.ranges, seenBy) : null,
  };
}

const wayOf = ({ seenBy = 'pose' }: DoneSet): SeenBy => seenBy;

/** Days with at least one measured repetition, oldest first. */
function rangesByDay(sets: readonly DoneSet[]): readonly { readonly day: CalendarDay; readonly ranges: readonly Deg[] }[] {
  const days = new Map<CalendarDay, Deg[]>();
  for (const { day, rangesDeg } of sets) if (rangesDeg.length > 0) days.set(day, [...(days.get(day) ?? []), ...rangesDeg]);
  return [...days].map(([day, ranges]) => ({ day, ranges })).toSorted((a, b) => (a.day < b.day ? -1 : 1));
}

/** Half the width of the 95 % band of a range in this exercise: measurement error alone. */
export const rangeBandOf = (exercise: ExerciseId, seenBy: SeenBy): Deg =>
  deg(Z95 * rangeErrorOf(exercise, 'legs', seenBy).semDeg);

export function againstTarget(target: Target, rangeDeg: Deg, bandDeg: Deg): AgainstTarget {
  if (target.kind !== 'range') return null;
  if (rangeDeg + bandDeg < target.fromDeg) return 'below';
  return rangeDeg - bandDeg > target.toDeg ? 'above' : 'within';
}
