import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { type GivenPlan, standingOf, takenOn } from '../../dose/given-plan.ts';
import { DayProblem } from '../day/day-problem.tsx';
import { entryNow } from '../day/entry-now.ts';
import { useDay } from '../day/use-day.ts';
import { Notice } from '../parts/notice.tsx';
import { useServices } from '../services-context.tsx';
import { useWords } from '../words/words-context.tsx';
import { PlanLines } from './plan-lines.tsx';
import { dayWritten, originSays } from './plan-says.ts';

/** A plan that was read well: what it says, and the choice to take it on. Nothing is written before that. */
export function OfferedPlan({ plan }: { readonly plan: GivenPlan }) {
  const words = useWords();
  const { take, says } = words.handOver;
  const { diary } = useServices();
  const { log, today, problem, add } = useDay();
  const [, navigate] = useLocation();
  const [taking, setTaking] = useState(false);
  // Once it is being taken, the diary holds it: that is no news to tell.
  const [standing, setStanding] = useState<ReturnType<typeof standingOf> | null>(null);
  if (log && !standing) setStanding(standingOf(plan, log.prescriptions));
  const takeOn = async () => {
    setTaking(true);
    // Another tab may have taken a plan on meanwhile.
    const now = await diary.log();
    const still = now.ok ? standingOf(plan, now.value.prescriptions) : null;
    if (still && still.kind !== 'new') {
      setStanding(still);
      return;
    }
    const saved = await add([takenOn(plan, entryNow())]);
    if (saved) navigate('/today', { replace: true });
    else setTaking(false);
  };
  const told =
    standing?.kind === 'held'
      ? take.held
      : standing?.kind === 'older'
        ? take.older(dayWritten(standing.writtenAt, words.locale))
        : null;
  return (
    <>
      <DayProblem problem={problem} />
      {told ? (
        <Notice icon="warning" look="caution" title={told.title} alert>
          <p>{told.todo}</p>
        </Notice>
      ) : null}
      <p>
        <strong>{originSays(plan, words)}</strong>
        {plan.origin === 'example' ? ` ${says.invented}` : null}
      </p>
      <PlanLines items={plan.items} />
      {standing?.kind === 'new' && today ? <p>{take.instead}</p> : null}
      <p className="take-answer">
        {standing?.kind === 'new' ? (
          <>
            <button type="button" className="button" data-look="main" disabled={taking} onClick={() => void takeOn()}>
              {take.takeOn}
            </button>
            <Link href="/today" className="button">
              {take.notNow}
            </Link>
          </>
        ) : null}
        {told || (problem && !standing) ? (
          <Link href="/today" className="button" data-look="main">
            {take.toToday}
          </Link>
        ) : null}
      </p>
    </>
  );
}
