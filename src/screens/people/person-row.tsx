import { Link } from 'wouter';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { prescribedWords } from '../day/prescribed-words.ts';
import { useWords } from '../words/words-context.tsx';
import { AttentionList } from './attention-list.tsx';
import { daysAgoIn } from './days-ago.ts';
import type { PersonLine } from './people-lines.ts';

/** One person of the list: who, what is prescribed, what is the matter. The whole line leads to them. */
export function PersonRow({ line, today }: { readonly line: PersonLine; readonly today: CalendarDay }) {
  const words = useWords();
  const { people, locale } = words;
  const { person, facts, attention } = line;
  const plan = facts?.plan && [...new Set(facts.plan.lines.map(({ exercise }) => prescribedWords(exercise, words).plural))];
  return (
    <Link href={`/person/${person.id}`} className="person-row">
      <span className="person-row-who">
        <strong>{person.name}</strong>
        <span className="soft small">{people.affected[person.affectedSide ?? 'unsaid']}</span>
      </span>
      {facts === null ? (
        <span className="soft">{people.looking}</span>
      ) : (
        <>
          <span className="person-row-plan small">
            <span>{plan ? [...new Set(plan)].join(', ') : people.noPlan}</span>
            <span className="soft">
              {facts.lastActivity ? people.heard(daysAgoIn(locale, facts.lastActivity, today)) : people.neverHeard}
            </span>
          </span>
          <AttentionList attention={attention} today={today} />
        </>
      )}
    </Link>
  );
}
