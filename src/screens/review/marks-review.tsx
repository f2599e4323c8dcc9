import { PlainTable } from '../chart/value-table.tsx';
import { shortDayIn } from '../day/clock-words.ts';
import { degreesIn } from '../result/degrees.ts';
import { useWords } from '../words/words-context.tsx';
import { type MarkSession, markSessions } from './mark-sessions.ts';
import { errorIn, howIn, meanIn, pairIn, whatIn } from './mark-words.ts';
import type { Reviewed } from './use-review.ts';

function Session({ session: { day, exercise, rows, pairs } }: { readonly session: MarkSession }) {
  const words = useWords();
  const { review, exercises, sides, locale } = words;
  const { marks: said } = review;
  const degrees = degreesIn(locale);
  return (
    <div className="review-item">
      <h3>{said.session(shortDayIn(locale, day), exercises[exercise].name)}</h3>
      <PlainTable
        columns={[said.what, said.trials, said.mean, said.one, said.how]}
        rows={rows.map((row) => {
          const { side, marks } = row;
          return {
            key: `${side} ${whatIn(row, review)}`,
            cells: [
              `${sides[side].leg}, ${whatIn(row, review)}`,
              marks.map(({ angleDeg }) => `${degrees(angleDeg)}°`).join(' · '),
              meanIn(row, words),
              errorIn(row, words),
              howIn(row, words),
            ],
          };
        })}
      />
      {pairs.map((pair) => (
        <p key={whatIn(pair, review)}>{pairIn(pair, words)}</p>
      ))}
    </div>
  );
}

/** The angles that a therapist marked, session by session, the newest first. */
export function MarksReview({ reviewed: { log, from, to } }: { readonly reviewed: Reviewed }) {
  const { review } = useWords();
  const sessions = markSessions(log.angleMarks, from, to);
  return (
    <section>
      <h2>{review.marks.title}</h2>
      {sessions.length === 0 ? <p>{review.marks.none}</p> : null}
      {sessions.map((session) => (
        <Session key={`${session.sessionId} ${session.exercise}`} session={session} />
      ))}
    </section>
  );
}
