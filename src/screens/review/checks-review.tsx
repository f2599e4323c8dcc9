import { shortDayIn } from '../day/clock-words.ts';
import { foundIn } from '../report/found-in.ts';
import { LegTable } from '../report/leg-table.tsx';
import { useWords } from '../words/words-context.tsx';
import { checkAnswers } from './check-answers.ts';
import type { Reviewed } from './use-review.ts';

/** Every answer to the checks of strength, leg by leg. */
export function ChecksReview({ reviewed: { log, from, to } }: { readonly reviewed: Reviewed }) {
  const words = useWords();
  const { review, report, check: said, locale } = words;
  const rows = checkAnswers(log.selfChecks, from, to);
  return (
    <section>
      <h2>{review.checks.title}</h2>
      {rows.length === 0 ? (
        <p>{report.checks.none}</p>
      ) : (
        <LegTable
          className="plain-table"
          first={report.checks.check}
          rows={rows.map(({ check, legs }) => ({
            key: check,
            name: said.names[check],
            cell: (side) => (
              <ul>
                {legs[side].map(({ day, found, worse }) => (
                  <li key={day}>
                    {shortDayIn(locale, day)}: {foundIn({ check, found }, words)}
                    {worse ? <strong> ({report.checks.worse})</strong> : null}
                  </li>
                ))}
              </ul>
            ),
          }))}
        />
      )}
    </section>
  );
}
