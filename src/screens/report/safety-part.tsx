import type { DoseLog } from '../../dose/dose-log.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { mayExercise } from '../../symptoms/may-exercise.ts';
import type { Words } from '../words/words.ts';
import { useWords } from '../words/words-context.tsx';
import { dateIn } from './date-in.ts';
import { type SafetyEvent, safetyOfDays } from './safety-events.ts';

function eventIn(event: SafetyEvent, { report: { safety }, day }: Words): string {
  switch (event.kind) {
    case 'flags':
      return `${safety.yesTo} ${event.flags.map((flag) => day.questions.flags[flag]).join(' ')}`;
    case 'weakness':
      return safety.weakness[event.cause];
    case 'cleared':
      return `${safety.cleared} ${event.note}`.trim();
    default:
      return event satisfies never;
  }
}

interface SafetyPartProps {
  readonly log: DoseLog;
  readonly from: CalendarDay;
  readonly to: CalendarDay;
}

/** What was told of warning signs and weakness, and what was cleared. */
export function SafetyPart({ log, from, to }: SafetyPartProps) {
  const words = useWords();
  const { safety } = words.report;
  const { rounds, unanswered, events } = safetyOfDays(log, from, to);
  const noYes = rounds > 0 && !events.some(({ kind }) => kind === 'flags');
  return (
    <section>
      <h2>{safety.title}</h2>
      <p>
        {safety.asked(rounds)} {noYes ? safety.noYes : ''} {unanswered > 0 ? safety.unanswered(unanswered) : ''}
      </p>
      {mayExercise(log, to).kind === 'stopped' ? (
        <p>
          <strong>{safety.stopped}</strong>
        </p>
      ) : null}
      {events.length === 0 ? null : (
        <ul>
          {events.map((event) => (
            <li key={`${event.at} ${event.kind}`}>
              {dateIn(words.locale, event.day)}: {eventIn(event, words)}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
