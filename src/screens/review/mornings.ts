import type { DoseLog } from '../../dose/dose-log.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { byMoment } from '../../symptoms/entry.ts';

/** What was told on the days after days of sets. */
export interface Mornings {
  /** Days of which it was told whether something was stirred up; `well` of them: nothing was, or it had settled. */
  readonly told: number;
  readonly well: number;
  readonly notSettled: number;
  /** Days with sets of which it was not told. Today's are not asked for yet. */
  readonly open: number;
}

/** The answers about the days from `from` to `to`, both included; of several about one day the last counts. */
export function morningsOf({ checkIns, done }: Pick<DoseLog, 'checkIns' | 'done'>, from: CalendarDay, to: CalendarDay): Mornings {
  const answers = new Map(
    checkIns
      .filter(({ aboutDay, afterwards }) => aboutDay >= from && aboutDay <= to && afterwards !== 'not-answered')
      .toSorted(byMoment)
      .map(({ aboutDay, afterwards }) => [aboutDay, afterwards]),
  );
  const days = new Set(done.flatMap(({ day, reps }) => (reps > 0 && day >= from && day < to ? [day] : [])));
  const notSettled = [...answers.values()].filter((each) => each === 'not-settled').length;
  return {
    told: answers.size,
    well: answers.size - notSettled,
    notSettled,
    open: [...days].filter((day) => !answers.has(day)).length,
  };
}
