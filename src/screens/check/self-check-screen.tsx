import { useState } from 'react';
import { Link } from 'wouter';
import type { Side } from '../../pose/landmarks.ts';
import { SELF_CHECK_IDS, type SelfCheck, type SelfCheckId } from '../../symptoms/self-check.ts';
import { type WorseFinding, worseThanLast } from '../../symptoms/self-check-change.ts';
import type { Deg } from '../../units.ts';
import { DayProblem } from '../day/day-problem.tsx';
import { entryNow } from '../day/entry-now.ts';
import { useDay } from '../day/use-day.ts';
import { timeZoneHere } from '../parts/clock-now.ts';
import { Notice } from '../parts/notice.tsx';
import { Page } from '../parts/page.tsx';
import { useStoredSets } from '../start/use-stored-sets.ts';
import { useWords } from '../words/words-context.tsx';
import { CheckQuestion } from './check-question.tsx';
import { type Answers, answerKey, findingsOf } from './finding.ts';
import { toeHint, toeLiftsOn } from './toe-lifts-on.ts';
import './self-check-screen.css';

const SIDES: readonly Side[] = ['left', 'right'];

/** What the check came to: nothing weaker, or what is and whom to call. */
function Outcome({ worse }: { readonly worse: readonly WorseFinding[] }) {
  const { check: words, sides, feet } = useWords();
  return (
    <Page className="self-check" title={words.title} back="/today">
      <div className="self-check-parts">
        {worse.length === 0 ? (
          <p>{words.kept}</p>
        ) : (
          <Notice icon="warning" look="fault" title={words.worseTitle} alert>
            <ul>
              {worse.map(({ check, side }) => (
                <li key={answerKey(check, side)}>
                  {words.worse(words.names[check], (check === 'big-toe' ? feet : sides)[side].legLower)}
                </li>
              ))}
            </ul>
            <p>{words.worseTodo}</p>
          </Notice>
        )}
        <Link href="/today" className="button" data-look="main">
          {words.toToday}
        </Link>
      </div>
    </Page>
  );
}

/** The prescribed checks of strength, or all of them when none is due. */
export function SelfCheckScreen() {
  const { check: words, app, locale } = useWords();
  const { day, log, today, problem, add } = useDay();
  const stored = useStoredSets();
  const lifts = toeLiftsOn(stored?.ok ? stored.value.sets : [], day, timeZoneHere());
  const toeToday = (check: SelfCheckId, side: Side): string | null => {
    const own = lifts[side];
    if (check !== 'big-toe' || own === undefined) return null;
    const other = lifts[side === 'left' ? 'right' : 'left'];
    const whole = (angle: Deg) => new Intl.NumberFormat(locale, { maximumFractionDigits: 0 }).format(angle);
    const lift = words.toeToday(whole(own), other === undefined ? null : whole(other));
    const hint = toeHint(own, other);
    return hint ? `${lift} ${words.toeHint[hint](words.bigToe[hint])}` : lift;
  };
  const [answers, setAnswers] = useState<Answers>(new Map());
  const [worse, setWorse] = useState<readonly WorseFinding[] | null>(null);
  if (worse) return <Outcome worse={worse} />;
  if (!log && !problem) return <p className="heard">{app.loading}</p>;
  const due = today?.selfChecks ?? [];
  const checks = due.length > 0 ? due : SELF_CHECK_IDS;
  const keep = async () => {
    const entry: SelfCheck = { ...entryNow(), kind: 'self-check', findings: findingsOf(checks, answers) };
    const before = log?.selfChecks ?? [];
    if (await add([entry])) setWorse(worseThanLast(entry, before));
  };
  return (
    <Page className="self-check" title={words.title} lead={words.lead} back="/today">
      <div className="self-check-parts">
        <DayProblem problem={problem} />
        {checks.map((check) => (
          <section key={check} className="self-check-one">
            <h2>{words.names[check]}</h2>
            <p>{words.how[check]}</p>
            {SIDES.map((side) => {
              const key = answerKey(check, side);
              return (
                <CheckQuestion
                  key={key}
                  check={check}
                  side={side}
                  measured={toeToday(check, side)}
                  chosen={answers.get(key) ?? 'not-answered'}
                  onChoose={(value) => setAnswers(new Map(answers).set(key, value))}
                />
              );
            })}
          </section>
        ))}
        <button type="button" className="button" data-look="main" onClick={() => void keep()}>
          {words.keep}
        </button>
      </div>
    </Page>
  );
}
