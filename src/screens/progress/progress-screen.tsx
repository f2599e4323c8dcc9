import { type Progress, progress } from '../../dose/progress.ts';
import { dayIn, shortDayIn } from '../day/clock-words.ts';
import { DayProblem } from '../day/day-problem.tsx';
import { useDay } from '../day/use-day.ts';
import { Page } from '../parts/page.tsx';
import { useWords } from '../words/words-context.tsx';
import { LineProgress } from './line-progress.tsx';
import './progress-screen.css';

/** How many days are looked back on. Chosen: to about the last visit. */
const DAYS = 14;

function Symptoms({ found }: { readonly found: Progress }) {
  const { progress: words, feel, locale } = useWords();
  return (
    <section className="line-progress">
      <h2>{words.symptomsTitle}</h2>
      <p>{words.shift[found.shift.kind]}</p>
      {found.symptoms.length === 0 ? null : (
        <table>
          <thead>
            <tr>
              <th scope="col">{words.day}</th>
              <th scope="col">{words.worst}</th>
              <th scope="col">{words.furthest}</th>
            </tr>
          </thead>
          <tbody className="numbers">
            {found.symptoms.map(({ day, most, mostDistant }) => (
              <tr key={day}>
                <th scope="row">{shortDayIn(locale, day)}</th>
                <td>{most ?? words.unsaid}</td>
                <td>{mostDistant ? feel.regions[mostDistant.region] : ''}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

/** The last two weeks: done against due, range against target and the other leg, symptoms. */
export function ProgressScreen() {
  const { progress: words, app, locale } = useWords();
  const { log, today, problem } = useDay();
  const found = log && today ? progress(log, today.day, DAYS) : null;
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
        {found?.lines.map((line) => (
          <LineProgress key={`${line.item.id} ${line.side}`} line={line} />
        ))}
        {found ? <Symptoms found={found} /> : null}
      </div>
    </Page>
  );
}
