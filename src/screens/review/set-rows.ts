import type { DoseLog } from '../../dose/dose-log.ts';
import { localTime } from '../../dose/local-time.ts';
import type { PrescribedExerciseId } from '../../dose/prescribed-exercise.ts';
import type { Side } from '../../pose/landmarks.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import type { ShownSet } from '../services.ts';

/** One set of the list: measured, with a page of its own, or counted without the camera. */
export type SetRow = { readonly id: string; readonly day: CalendarDay; readonly at: string } & (
  | { readonly kind: 'measured'; readonly set: ShownSet }
  | { readonly kind: 'by-hand'; readonly exercise: PrescribedExerciseId; readonly side: Side; readonly reps: number }
);

/**
 * Every set of the days from `from` to `to`, both included, the newest first; also those that count for no line, such as films.
 * @param timeZone IANA name; on which day a set was that the log does not have
 */
export function setRows(
  log: Pick<DoseLog, 'done'>,
  sets: readonly ShownSet[],
  from: CalendarDay,
  to: CalendarDay,
  timeZone: string,
): readonly SetRow[] {
  const days = new Map(log.done.map(({ id, day }) => [id, day]));
  const measured = new Set(sets.map(({ id }) => id));
  const rows: readonly SetRow[] = [
    ...sets.map((set): SetRow => {
      const day = days.get(set.id) ?? localTime({ nowMs: Date.parse(set.startedAt), timeZone }).day;
      return { kind: 'measured', id: set.id, day, at: set.startedAt, set };
    }),
    ...log.done
      .filter(({ id, rangesDeg }) => !measured.has(id) && rangesDeg.length === 0)
      .map(
        ({ id, day, endedAt, exercise, side, reps }): SetRow => ({ kind: 'by-hand', id, day, at: endedAt, exercise, side, reps }),
      ),
  ];
  return rows.filter(({ day }) => day >= from && day <= to).toSorted((a, b) => (a.at > b.at ? -1 : 1));
}
