import type { Side } from '../../pose/landmarks.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { byMoment } from '../../symptoms/entry.ts';
import { SELF_CHECK_IDS, type SelfCheck, type SelfCheckFinding, type SelfCheckId } from '../../symptoms/self-check.ts';
import { worseThanLast } from '../../symptoms/self-check-change.ts';

/** One answer to a check of strength. */
export interface CheckAnswer {
  readonly day: CalendarDay;
  readonly found: SelfCheckFinding['found'];
  /** Worse than the answer before it, earlier days too. */
  readonly worse: boolean;
}

/** All answers to one check, each leg's in order of time. */
export interface CheckAnswers {
  readonly check: SelfCheckId;
  readonly legs: Readonly<Record<Side, readonly CheckAnswer[]>>;
}

/** The checks answered from `from` to `to`, both included. */
export function checkAnswers(selfChecks: readonly SelfCheck[], from: CalendarDay, to: CalendarDay): readonly CheckAnswers[] {
  const own = selfChecks.filter(({ day }) => day >= from && day <= to).toSorted(byMoment);
  const answersOf = (check: SelfCheckId, side: Side) =>
    own.flatMap((each): readonly CheckAnswer[] => {
      const worse = worseThanLast(each, selfChecks).some((one) => one.check === check && one.side === side);
      const given = each.findings.filter((one) => one.check === check && one.side === side && one.found !== 'not-answered');
      return given.map(({ found }) => ({ day: each.day, found, worse }));
    });
  return SELF_CHECK_IDS.map((check) => ({
    check,
    legs: { left: answersOf(check, 'left'), right: answersOf(check, 'right') },
  })).filter(({ legs }) => legs.left.length + legs.right.length > 0);
}
