import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import type { SelfCheck } from '../../symptoms/self-check.ts';
import { shortDayIn } from '../day/clock-words.ts';
import { useWords } from '../words/words-context.tsx';
import { type CheckRow, checkRows } from './check-rows.ts';
import { foundIn } from './found-in.ts';
import { LegTable } from './leg-table.tsx';

interface ChecksPartProps {
  readonly selfChecks: readonly SelfCheck[];
  readonly from: CalendarDay;
  readonly to: CalendarDay;
}

/** The checks of strength: the first and the last answer of each leg. */
export function ChecksPart({ selfChecks, from, to }: ChecksPartProps) {
  const words = useWords();
  const { report, check: said, locale } = words;
  const { checks } = report;
  const rows = checkRows(selfChecks, from, to);
  const asked = [...new Set(rows.map(({ check }) => check))];
  const one = (check: CheckRow['check'], { day, found }: CheckRow['first']) =>
    `${foundIn({ check, found }, words)} (${shortDayIn(locale, day)})`;
  const cell = (row: CheckRow | undefined) => {
    if (!row) return null;
    const first = one(row.check, row.first);
    const both = row.last ? checks.fromTo(first, one(row.check, row.last)) : first;
    return (
      <>
        {both} {row.worse ? <strong>{checks.worse}</strong> : null}
      </>
    );
  };
  return (
    <section>
      <h2>{checks.title}</h2>
      {rows.length === 0 ? (
        <p>{checks.none}</p>
      ) : (
        <LegTable
          className="report-checks"
          first={checks.check}
          rows={asked.map((check) => ({
            key: check,
            name: said.names[check],
            cell: (side) => cell(rows.find((row) => row.check === check && row.side === side)),
          }))}
        />
      )}
    </section>
  );
}
