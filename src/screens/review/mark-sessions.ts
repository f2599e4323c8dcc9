import { type RangeDifference, rangeDifference, type TooFewRepetitions } from '../../compare/range-difference.ts';
import { type Trials, trialsOf } from '../../compare/trials.ts';
import type { ExerciseId } from '../../exercises/exercise.ts';
import type { Side } from '../../pose/landmarks.ts';
import type { Result } from '../../result.ts';
import type { AngleMark, AngleMarkFor, FootHeld, MarkZero } from '../../symptoms/angle-mark.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { byMoment } from '../../symptoms/entry.ts';

/** Marks that may be put into one mean: of one leg, for one thing, from one zero, with the foot held one way. */
export interface MarkRow {
  readonly side: Side;
  readonly mark: AngleMarkFor;
  readonly zero: MarkZero;
  readonly foot: FootHeld | null;
  /** In the order of their trials. At least one. */
  readonly marks: readonly AngleMark[];
  readonly trials: Trials;
}

/** Left against right of the rows that are alike in all but the leg. */
export interface MarkPair extends Pick<MarkRow, 'mark' | 'zero' | 'foot'> {
  /** Left minus right. */
  readonly difference: Result<RangeDifference, TooFewRepetitions>;
}

/** The marks that were taken together. */
export interface MarkSession {
  readonly sessionId: string;
  readonly day: CalendarDay;
  readonly exercise: ExerciseId;
  readonly rows: readonly MarkRow[];
  readonly pairs: readonly MarkPair[];
}

/** The same for marks that may be compared. */
export const keyOfMark = ({ mark, zero, foot }: Pick<MarkRow, 'mark' | 'zero' | 'foot'>): string =>
  JSON.stringify([mark, zero, foot]);

/** Alike by a key, each group in the order of the whole. */
export const grouped = <T>(all: readonly T[], key: (each: T) => string): readonly (readonly [T, ...T[]])[] => {
  const groups = new Map<string, [T, ...T[]]>();
  for (const each of all) {
    const group = groups.get(key(each));
    if (group) group.push(each);
    else groups.set(key(each), [each]);
  }
  return [...groups.values()];
};

/** The sessions of the days from `from` to `to`, both included, the newest first. */
export function markSessions(marks: readonly AngleMark[], from: CalendarDay, to: CalendarDay): readonly MarkSession[] {
  const own = marks.filter(({ day }) => day >= from && day <= to).toSorted(byMoment);
  const sessions = grouped(own, ({ sessionId, exercise }) => `${sessionId} ${exercise}`).map((all): MarkSession => {
    const [{ sessionId, day, exercise }] = all;
    const rows = grouped(all, (each) => `${each.side} ${keyOfMark(each)}`).flatMap((group): readonly MarkRow[] => {
      const [{ side, mark, zero, foot }] = group;
      const trials = trialsOf(group.map(({ angleDeg }) => angleDeg));
      return trials ? [{ side, mark, zero, foot, marks: group.toSorted((a, b) => a.trial - b.trial), trials }] : [];
    });
    return { sessionId, day, exercise, rows, pairs: pairsOf(exercise, rows) };
  });
  return sessions.toReversed();
}

function pairsOf(exercise: ExerciseId, rows: readonly MarkRow[]): readonly MarkPair[] {
  return rows.flatMap((left): readonly MarkPair[] => {
    const right = rows.find((row) => row.side === 'right' && keyOfMark(row) === keyOfMark(left));
    if (left.side !== 'left' || !right) return [];
    const angles = (row: MarkRow) => row.marks.map(({ angleDeg }) => angleDeg);
    const { mark, zero, foot } = left;
    return [{ mark, zero, foot, difference: rangeDifference(exercise, 'marks', angles(left), angles(right)) }];
  });
}
