import { useState } from 'react';
import { Link } from 'wouter';
import { propose } from '../../dose/propose.ts';
import type { Today } from '../../dose/today.ts';
import { limbsOf } from '../parts/limb-words.ts';
import { Page } from '../parts/page.tsx';
import { usePerson } from '../people/person-context.tsx';
import { useWords } from '../words/words-context.tsx';
import { dayIn, timeIn } from './clock-words.ts';
import { DayProblem } from './day-problem.tsx';
import { DueMessages } from './due-messages.tsx';
import { ExampleNotice } from './example-notice.tsx';
import { ExamplePlan } from './example-plan.tsx';
import { LineCard } from './line-card.tsx';
import { prescribedWords } from './prescribed-words.ts';
import { ProposalCard } from './proposal-card.tsx';
import { RemindersLink } from './reminders-link.tsx';
import { isRest, RestClock } from './rest-clock.tsx';
import { StopNotice } from './stop-notice.tsx';
import './today-screen.css';
import { type DayInUse, useDay } from './use-day.ts';

/** The day in one sentence. */
function useGlance({ lines, next }: Today): string | null {
  const words = useWords();
  const { day, locale } = words;
  if (next === null) return lines.some(({ state }) => state === 'done') ? day.allDone : null;
  const { plural } = prescribedWords(next.item.exercise, words);
  const leg = limbsOf(next.item.exercise, words)[next.side].legLower;
  return next.state === 'now' ? day.doNow(plural, leg) : day.nextAt(plural, leg, timeIn(locale, next.mayStartMs ?? 0));
}

/** What comes before the next set: answers that are open. */
function Asked({ today }: { readonly today: Today }) {
  const { day, check, locale } = useWords();
  const [reason] = today.questions;
  return (
    <ul className="day-asked">
      {today.checkInAbout === null ? null : (
        <li>
          <p>{day.checkInCard(dayIn(locale, today.checkInAbout))}</p>
          <Link href="/check-in" className="button">
            {day.checkInOpen}
          </Link>
        </li>
      )}
      {reason === undefined ? null : (
        <li>
          <p>{day.questionsCard[reason]}</p>
          <Link href="/questions" className="button">
            {day.questionsOpen}
          </Link>
        </li>
      )}
      {today.selfChecks.length === 0 ? null : (
        <li>
          <p>{check.due}</p>
          <Link href="/self-check" className="button">
            {check.open}
          </Link>
        </li>
      )}
    </ul>
  );
}

function Planned({ today, look, log, add, reload }: DayInUse & { readonly today: Today }) {
  const { day, progress, handOver } = useWords();
  const isOwn = usePerson() === null;
  const glance = useGlance(today);
  const { prescription, gate, lines, next } = today;
  const waiting = lines.flatMap(({ state, mayStartMs }) => (state === 'later' && mayStartMs !== null ? [mayStartMs] : []));
  const first = waiting.length > 0 ? Math.min(...waiting) : null;
  const resting = isRest(first, look.clock.nowMs) ? first : null;
  const [rested, setRested] = useState(false);
  const over = () => {
    setRested(true);
    reload();
  };
  return (
    <>
      {prescription.origin === 'example' ? <ExampleNotice onRemoved={reload} /> : null}
      {gate.kind === 'stopped' ? <StopNotice stop={gate} add={add} /> : <Asked today={today} />}
      {gate.kind === 'may' && glance !== null ? <p className="day-glance">{glance}</p> : null}
      {gate.kind === 'may' && resting !== null ? <RestClock untilMs={resting} look={look} onOver={over} /> : null}
      {gate.kind === 'may' && rested && resting === null ? (
        <p className="day-glance" role="status">
          {day.rested}
        </p>
      ) : null}
      <ul className="day-lines">
        {(gate.kind === 'may' ? lines : []).map((line) => (
          <LineCard key={`${line.item.id} ${line.side}`} line={line} main={line === next} />
        ))}
      </ul>
      <ul className="day-proposals">
        {gate.kind === 'may' && log
          ? prescription.items.map((item) => (
              <ProposalCard
                key={item.id}
                proposal={propose(prescription, item, log, today.day)}
                prescription={prescription}
                item={item}
                add={add}
              />
            ))
          : null}
      </ul>
      <p className="day-actions">
        <Link href="/progress" className="button">
          {progress.open}
        </Link>
        <Link href="/plan" className="button">
          {day.changePlan}
        </Link>
        <Link href="/plan/give" className="button">
          {handOver.give.open}
        </Link>
        {/* Only one's own sets are watched for; a calendar is one's own too. */}
        {isOwn ? <DueMessages /> : null}
        {isOwn && log ? <RemindersLink prescription={prescription} log={log} today={today.day} /> : null}
      </p>
    </>
  );
}

/** What is due today, what is done, when the next set may come. */
export function TodayScreen() {
  const { day, app, locale, handOver, people } = useWords();
  const isOfPerson = usePerson() !== null;
  const inUse = useDay();
  const { log, today, gate, problem, add } = inUse;
  return (
    <Page className="today" title={day.title} lead={today ? dayIn(locale, today.day) : undefined} back="/">
      <div className="today-parts">
        <DayProblem problem={problem} />
        {!log && !problem ? <p className="heard">{app.loading}</p> : null}
        {today ? <Planned {...inUse} today={today} /> : null}
        {log && !today && gate?.kind === 'stopped' ? <StopNotice stop={gate} add={add} /> : null}
        {log && !today && gate?.kind === 'may' ? (
          <section className="day-none">
            <h2>{day.noPlan}</h2>
            <p>{isOfPerson ? people.person.noPlanTodo : day.noPlanTodo}</p>
            <div className="day-actions">
              <Link href="/plan" className="button" data-look="main">
                {day.makePlan}
              </Link>
              <Link href="/take" className="button">
                {isOfPerson ? people.person.take : handOver.take.open}
              </Link>
              {/* Nothing invented goes into somebody's record. */}
              {isOfPerson ? null : <ExamplePlan add={add} />}
            </div>
          </section>
        ) : null}
      </div>
    </Page>
  );
}
