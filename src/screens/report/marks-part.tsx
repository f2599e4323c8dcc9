import type { AngleMark } from '../../symptoms/angle-mark.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { grouped, keyOfMark, markSessions } from '../review/mark-sessions.ts';
import { markRowsWords, verdictIn } from '../review/mark-words.ts';
import { useWords } from '../words/words-context.tsx';
import { dateIn } from './date-in.ts';

interface MarksPartProps {
  readonly marks: readonly AngleMark[];
  readonly from: CalendarDay;
  readonly to: CalendarDay;
}

/** What the therapist marked last of each movement, one line for each mark: both legs, and one against the other. Nothing where nothing was marked. */
export function MarksPart({ marks, from, to }: MarksPartProps) {
  const words = useWords();
  const newest = grouped(markSessions(marks, from, to), ({ exercise }) => exercise).map(([session]) => session);
  if (newest.length === 0) return null;
  return (
    <section>
      <h2>{words.review.marks.title}</h2>
      {newest.map(({ sessionId, exercise, day, rows, pairs }) => (
        <div key={`${sessionId} ${exercise}`}>
          <ul className="report-marks">
            {grouped(rows, keyOfMark).map((ofLegs) => {
              const key = keyOfMark(ofLegs[0]);
              const pair = pairs.find((each) => keyOfMark(each) === key);
              return (
                <li key={key}>
                  {words.exercises[exercise].name}, {dateIn(words.locale, day)}, {markRowsWords(ofLegs, words)}{' '}
                  {pair ? verdictIn(pair, words) : null}
                </li>
              );
            })}
          </ul>
        </div>
      ))}
    </section>
  );
}
