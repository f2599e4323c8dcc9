import type { Side } from '../../pose/landmarks.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { byMoment } from '../../symptoms/entry.ts';
import { SELF_CHECK_IDS, type SelfCheck, type SelfCheckFinding, type SelfCheckId } from '../../symptoms/self-check.ts';
import { worseThanLast } from '../../symptoms/self-check-change.ts';

/** What a check of strength found on a day. */
interface Found {
  readonly day: CalendarDay;
  readonly found: SelfCheckFinding['found'];
}

/** One check of one leg over some days: its first and its last answer. */
export interface CheckRow {
  readonly check: SelfCheckId;
  readonly side: Side;
  readonly first: Found;
  /** Null when it was answered once only. */
  readonly last: Found | null;
  /** Whether one of these answers was worse than the one before it. */
  readonly worse: boolean;
}

/** The checks answered from `from` to `to`, both included. What is worse is told against all answers before, earlier days too. */
export function checkRows(selfChecks: readonly SelfCheck[], from: CalendarDay, to: CalendarDay): readonly CheckRow[] {
  const own = selfChecks.filter(({ day }) => day >= from && day <= to).toSorted(byMoment);
  const worse = own.flatMap((each) => worseThanLast(each, selfChecks));
  return SELF_CHECK_IDS.flatMap((check) =>
    (['left', 'right'] as const).flatMap((side) => {
      const answers = own.flatMap(({ day, findings }) =>
        findings.flatMap((each) =>
          each.check === check && each.side === side && each.found !== 'not-answered' ? [{ day, found: each.found }] : [],
        ),
      );
      const [first, last] = [answers[0], answers.at(-1)];
      if (!first || !last) return [];
      const isWorse = worse.some((each) => each.check === check && each.side === side);
      return [{ check, side, first, last: last === first ? null : last, worse: isWorse }];
    }),
  );
}
