import { useState } from 'react';
import { Link } from 'wouter';
import { type Progress, progress } from '../../dose/progress.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { MOST_INTENSITY } from '../../symptoms/felt.ts';
import { DayChart } from '../chart/day-chart.tsx';
import { PlainTable } from '../chart/value-table.tsx';
import { OptionCards } from '../choose/option-cards.tsx';
import { dayIn, shortDayIn } from '../day/clock-words.ts';
import { DayProblem } from '../day/day-problem.tsx';
import { useDay } from '../day/use-day.ts';
import { Page } from '../parts/page.tsx';
import { useWords } from '../words/words-context.tsx';
import { LineProgress } from './line-progress.tsx';
import { WEEKS, type Weeks } from './weeks.ts';
import './progress-screen.css';

function Symptoms({ found, days }: { readonly found: Progress; readonly days: readonly CalendarDay[] }) {
  const { progress: words, feel, locale } = useWords();
  const strongest = found.symptoms.flatMap(({ day, most }) => (most === null ? [] : [{ day, value: most, band: 0 }]));
  return (
    <section className="line-progress">
      <h2>{words.symptomsTitle}</h2>
      <p>{words.shift[found.shift.kind]}</p>
      {strongest.length === 0 ? null : (
        <DayChart
          days={days}
          values={strongest}
          target={null}
          reference={null}
          scale={{ from: 0, to: MOST_INTENSITY }}
          unit=""
          label={words.symptomsDrawn}
        />
      )}
      {found.symptoms.length === 0 ? null : (
        <PlainTable
          columns={[words.day, words.worst, words.furthest]}
          rows={found.symptoms.map(({ day, most, mostDistant }) => ({
            key: day,
            cells: [shortDayIn(locale, day), most ?? words.unsaid, mostDistant ? feel.regions[mostDistant.region] : ''],
          }))}
        />
      )}
    </section>
  );
}

/** The last weeks: done against due, range against target and the other leg, symptoms. */
export function ProgressScreen() {
  const { progress: words, report, review, app, locale } = useWords();
  const { log, today, problem } = useDay();
  const [weeks, setWeeks] = useState<Weeks>('2');
  const found = log && today ? progress(log, today.day, 7 * Number(weeks)) : null;
  return (
    <Page
      className="looking-back"
      title={words.title}
      lead={found ? words.lead(dayIn(locale, found.from), dayIn(locale, found.to)) : undefined}
      back="/today"
    >
      <div className="progress-parts">
        <DayProblem problem={problem} />
        {!log && !problem ? <p className="heard">{app.loading}</p> : null}
        {log && !found ? <p>{words.none}</p> : null}
        {log ? (
          <div className="progress-ways">
            <Link href="/report" className="button">
              {report.open}
            </Link>
            <Link href="/review" className="button">
              {review.open}
            </Link>
          </div>
        ) : null}
        {found ? (
          <div className="progress-weeks">
            <OptionCards
              legend={words.lookBack}
              name="weeks"
              options={WEEKS.map((value) => ({ value, name: words.weeks(Number(value)) }))}
              chosen={weeks}
              onChoose={setWeeks}
            />
          </div>
        ) : null}
        {found?.lines.map((line) => (
          <LineProgress key={`${line.item.id} ${line.side}`} line={line} />
        ))}
        {found ? <Symptoms found={found} days={found.lines[0]?.days.map(({ day }) => day) ?? []} /> : null}
      </div>
    </Page>
  );
}
