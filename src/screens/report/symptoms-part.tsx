import type { DoseLog } from '../../dose/dose-log.ts';
import type { Progress } from '../../dose/progress.ts';
import { MOST_INTENSITY } from '../../symptoms/felt.ts';
import { DayChart } from '../chart/day-chart.tsx';
import { shortDayIn } from '../day/clock-words.ts';
import { useWords } from '../words/words-context.tsx';
import { CHART_HEIGHT } from './measured-part.tsx';
import { symptomRows } from './symptom-rows.ts';

const WEEK = 7;

interface SymptomsPartProps {
  readonly found: Progress;
  readonly log: DoseLog;
  readonly weeks: number;
}

/** What was told about symptoms and on the days after: each day of two weeks, each week of more. */
export function SymptomsPart({ found, log, weeks }: SymptomsPartProps) {
  const { report, progress, feel, locale } = useWords();
  const { symptoms: words } = report;
  const daily = weeks <= 2;
  const rows = symptomRows(log, found.from, found.to, daily ? 1 : WEEK);
  const strongest = found.symptoms.flatMap(({ day, most }) => (most === null ? [] : [{ day, value: most, band: 0 }]));
  return (
    <section>
      <h2>{words.title}</h2>
      {rows.length === 0 ? <p>{words.none}</p> : <p>{progress.shift[found.shift.kind]}</p>}
      <div className="report-charts report-symptoms">
        {strongest.length === 0 ? null : (
          <div className="report-chart">
            <h3>{progress.worst}</h3>
            <DayChart
              days={found.lines[0]?.days.map(({ day }) => day) ?? []}
              values={strongest}
              target={null}
              reference={null}
              scale={{ from: 0, to: MOST_INTENSITY }}
              unit=""
              label={progress.symptomsDrawn}
              height={CHART_HEIGHT}
            />
          </div>
        )}
        {rows.length === 0 ? null : (
          <table>
            <thead>
              <tr>
                <th scope="col">{daily ? words.day : words.week}</th>
                <th scope="col">{words.strength}</th>
                <th scope="col">{words.furthest}</th>
                <th scope="col">{words.nextDay}</th>
              </tr>
            </thead>
            <tbody className="numbers">
              {rows.map(({ from, least, most, furthest, afterwards, weaker }) => (
                <tr key={from}>
                  <th scope="row">{shortDayIn(locale, from)}</th>
                  <td>{least === null || most === null ? progress.unsaid : words.fromTo(least, most)}</td>
                  <td>{furthest ? `${feel.regions[furthest.region]}, ${report.sides[furthest.side]}` : ''}</td>
                  <td>
                    {[afterwards && words.afterwards[afterwards], weaker && words.weaker].filter((each) => each).join(', ')}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </div>
    </section>
  );
}
