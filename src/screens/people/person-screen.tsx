import { useState } from 'react';
import { Link } from 'wouter';
import { attentionOn } from '../../dose/attention.ts';
import { personFacts } from '../../dose/person-facts.ts';
import { DayProblem } from '../day/day-problem.tsx';
import { useDay } from '../day/use-day.ts';
import { Icon } from '../parts/icon.tsx';
import { Page } from '../parts/page.tsx';
import { useRecordWords } from '../record/use-record-words.ts';
import { ServerLink } from '../server/server-link.tsx';
import { useWords } from '../words/words-context.tsx';
import { AttentionList } from './attention-list.tsx';
import type { PersonInUse } from './person-context.tsx';
import { PersonForm } from './person-form.tsx';
import './person-screen.css';
import { RemovePerson } from './remove-person.tsx';

const PARTS = [
  ['review', '/review'],
  ['measure', '/desk'],
  ['plan', '/plan'],
  ['give', '/plan/give'],
  ['report', '/report'],
  ['day', '/today'],
] as const;

/** One person: what needs the therapist, and the ways to everything of theirs. */
export function PersonScreen({ person, change, problem: unsaved }: PersonInUse) {
  const { people } = useWords();
  const { bring } = useRecordWords();
  const { log, day, problem } = useDay();
  const [editing, setEditing] = useState(false);
  const attention = log ? attentionOn(personFacts(log), person.seenUntil, day) : null;
  // A stop alone can't be taken off the list by having been seen.
  const canBeSeen = attention?.some(({ kind }) => kind !== 'stopped') ?? false;
  return (
    <Page className="person" title={person.name} lead={people.affected[person.affectedSide ?? 'unsaid']} back="~/people">
      <DayProblem problem={unsaved ?? problem} />
      {editing ? (
        <PersonForm
          first={person}
          onCancel={() => setEditing(false)}
          onKeep={async ({ name, affectedSide, notes }) => {
            if (await change({ name, affectedSide, notes })) setEditing(false);
          }}
        />
      ) : (
        <>
          {person.notes === '' ? null : <p className="person-notes">{person.notes}</p>}
          {attention === null ? null : (
            <section className="person-attention" aria-label={people.person.attention}>
              {attention.length === 0 ? (
                <p>{people.attention.calm}</p>
              ) : (
                <>
                  <h2>{people.person.attention}</h2>
                  <AttentionList attention={attention} today={day} />
                </>
              )}
              {canBeSeen ? (
                <>
                  <button type="button" className="button" onClick={() => void change({ seenUntil: day })}>
                    <Icon name="check" />
                    {people.person.seen}
                  </button>
                  <p className="soft small">{people.person.seenAbout}</p>
                </>
              ) : null}
            </section>
          )}
          <nav className="person-parts" aria-label={person.name}>
            {PARTS.map(([part, href]) => (
              <Link key={part} href={href}>
                <strong>{people.person.parts[part].name}</strong>
                <span className="soft small">{people.person.parts[part].about}</span>
              </Link>
            ))}
            <Link href="/bring">
              <strong>{bring.open.person.name}</strong>
              <span className="soft small">{bring.open.person.about}</span>
            </Link>
            <ServerLink look="part" />
          </nav>
          <div className="person-actions">
            <button type="button" className="button" onClick={() => setEditing(true)}>
              {people.person.edit}
            </button>
            <RemovePerson person={person} />
          </div>
        </>
      )}
    </Page>
  );
}
