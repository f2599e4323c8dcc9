import { deg } from '../../units.ts';
import { PlainTable } from '../chart/value-table.tsx';
import { shortDayIn } from '../day/clock-words.ts';
import { degreesIn } from '../result/degrees.ts';
import type { Words } from '../words/words.ts';
import { useWords } from '../words/words-context.tsx';
import { type MarkPair, type MarkRow, type MarkSession, markSessions } from './mark-sessions.ts';
import type { Reviewed } from './use-review.ts';

/** What was marked, from which zero, with the foot held how. */
const whatIn = ({ mark, zero, foot }: Pick<MarkRow, 'mark' | 'zero' | 'foot'>, { marks: said }: Words['review']): string =>
  [said.kinds[mark], said.zero[zero], ...(foot ? [said.foot[foot]] : [])].join(', ');

/** How the angles were come by, where the symptom was felt, and how many a hand corrected. */
function howIn({ marks }: MarkRow, { review, feel, report }: Words): string {
  const { marks: said } = review;
  const corrected = marks.filter(({ method }) => method === 'corrected').length;
  const methods = [...new Set(marks.flatMap(({ method }) => (method === 'corrected' ? [] : [said.method[method]])))];
  const sources = [...new Set(marks.map(({ from }) => said.from[from]))];
  const places = new Set(
    marks.flatMap(({ place }) => (place ? [`${feel.regions[place.region]}, ${report.sides[place.side]}`] : [])),
  );
  return [...sources, ...methods, ...(corrected > 0 ? [said.corrected(corrected, marks.length)] : []), ...places].join('; ');
}

/** One leg against the other, in a sentence. */
function pairIn(pair: MarkPair, { review, sides, locale }: Words): string {
  const { marks: said } = review;
  const what = whatIn(pair, review);
  if (!pair.difference.ok) return said.tooFew(what);
  const degrees = degreesIn(locale);
  const { differenceDeg, limitDeg, verdict } = pair.difference.value;
  const leg = sides[differenceDeg >= 0 ? 'left' : 'right'].leg;
  return `${said.against(what)} ${said.verdict[verdict](leg, degrees(deg(Math.abs(differenceDeg))), degrees(limitDeg))}`;
}

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
          const { side, marks, trials } = row;
          const spread = trials.spreadDeg === null ? '' : `, ${degrees(trials.spreadDeg)}°`;
          const error = marks.reduce<number>((most, { errorDeg }) => Math.max(most, errorDeg), 0);
          return {
            key: `${side} ${whatIn(row, review)}`,
            cells: [
              `${sides[side].leg}, ${whatIn(row, review)}`,
              marks.map(({ angleDeg }) => `${degrees(angleDeg)}°`).join(' · '),
              `${degrees(trials.meanDeg)}°${spread}`,
              `± ${degrees(deg(error))}°`,
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
