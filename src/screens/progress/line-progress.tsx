import type { LineProgress as Line } from '../../dose/progress.ts';
import { shortDayIn } from '../day/clock-words.ts';
import { prescribedWords } from '../day/prescribed-words.ts';
import { degreesIn } from '../result/degrees.ts';
import { useWords } from '../words/words-context.tsx';
import { RangeChart } from './range-chart.tsx';
import { rangeSentence } from './range-sentence.ts';

const KEYS = ['all', 'part', 'none', 'rest'] as const;

/** How full a day was. */
const fullness = (done: number, due: number): (typeof KEYS)[number] => {
  if (due === 0) return done > 0 ? 'all' : 'rest';
  if (done === 0) return 'none';
  return done >= due ? 'all' : 'part';
};

/** One line of the plan over the days: a sentence, a strip of days, and the same as a table. */
export function LineProgress({ line }: { readonly line: Line }) {
  const words = useWords();
  const { progress, sides, locale } = words;
  const { item, side, days, setsDue, setsDoneOfDue, daysDone, range } = line;
  const degrees = degreesIn(locale);
  const rangeOn = new Map(range?.days.map((each) => [each.day, each]));
  return (
    <section className="line-progress">
      <h2>
        {prescribedWords(item.exercise, words).plural}, {sides[side].legLower}
      </h2>
      <p>
        {setsDue > 0 ? progress.done(setsDoneOfDue, setsDue, daysDone) : progress.nothingDue}{' '}
        {range ? rangeSentence(range, progress, locale) : ''}
      </p>
      <div className="day-strip" aria-hidden="true">
        {days.map(({ day, setsDone, setsDue: due }) => (
          <span key={day} data-full={fullness(setsDone, due)}>
            <span className="small">{shortDayIn(locale, day)}</span>
          </span>
        ))}
      </div>
      <ul className="day-strip-key small">
        {KEYS.map((key) => (
          <li key={key}>
            <span data-full={key} aria-hidden="true" />
            {progress.dayFull[key]}
          </li>
        ))}
      </ul>
      {range ? <RangeChart range={range} target={item.target} days={days.map(({ day }) => day)} /> : null}
      <details>
        <summary>{progress.asTable}</summary>
        <table>
          <thead>
            <tr>
              <th scope="col">{progress.day}</th>
              <th scope="col">{progress.sets}</th>
              <th scope="col">{progress.range}</th>
            </tr>
          </thead>
          <tbody className="numbers">
            {days.map(({ day, setsDone, setsDue: due }) => {
              const measured = rangeOn.get(day);
              return (
                <tr key={day}>
                  <th scope="row">{shortDayIn(locale, day)}</th>
                  <td>{progress.setsOf(setsDone, due)}</td>
                  <td>{measured ? `${degrees(measured.rangeDeg)}° ± ${degrees(measured.bandDeg)}°` : ''}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </details>
    </section>
  );
}
