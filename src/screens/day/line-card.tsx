import { Link } from 'wouter';
import { mayDoMore, type TodayLine } from '../../dose/today-line.ts';
import { ExerciseDrawing } from '../choose/exercise-drawing.tsx';
import { Icon } from '../parts/icon.tsx';
import { limbsOf } from '../parts/limb-words.ts';
import { useWords } from '../words/words-context.tsx';
import { dayIn, timeIn } from './clock-words.ts';
import { prescribedWords } from './prescribed-words.ts';

/** What is said of a line's state. */
function useStateWords({ state, item, mayStartMs, nextDay }: TodayLine): string {
  const { day, locale } = useWords();
  if (state === 'done' && !mayDoMore({ state, item })) return day.doneNoMore;
  if (state === 'later') return day.later(timeIn(locale, mayStartMs ?? 0));
  if (state === 'rest-day') return day.restDay(nextDay === null ? '' : dayIn(locale, nextDay));
  return day.state[state];
}

/** One line of the prescription for one leg: what, how much, how many are done, and the way into the next set. */
export function LineCard({ line, main }: { readonly line: TodayLine; readonly main: boolean }) {
  const words = useWords();
  const { day } = words;
  const { item, side, dose, state, setsDue, done } = line;
  const said = useStateWords(line);
  const name = `${prescribedWords(item.exercise, words).plural}, ${limbsOf(item.exercise, words)[side].legLower}`;
  const go = state === 'done' ? day.again : day.start;
  return (
    <li className="day-line" data-state={state}>
      <ExerciseDrawing exercise={item.exercise} side={side} />
      <div className="day-line-words">
        <h2>{name}</h2>
        <p>{day.dose(dose.repsASet, dose.holdS)}</p>
        <p className="day-line-state">
          {state === 'done' ? <Icon name="check" size={22} /> : null}
          {said}
        </p>
      </div>
      {setsDue > 0 ? (
        <p className="day-line-count numbers">
          <span className="day-dots" aria-hidden="true">
            {Array.from({ length: setsDue }, (_, i) => i < done.length).map((isDone, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: the sets of a day have no other name than their place.
              <span key={i} data-done={isDone} />
            ))}
          </span>
          {day.setsDone(Math.min(done.length, setsDue), setsDue)}
        </p>
      ) : null}
      {state === 'now' || mayDoMore(line) ? (
        // Several lines have such a link: heard by itself it says whose.
        <Link
          href={`/today/ask/${item.id}/${side}`}
          className="button"
          data-look={main ? 'main' : undefined}
          aria-label={`${go}: ${name}`}
        >
          {go}
        </Link>
      ) : null}
    </li>
  );
}
