import { useState } from 'react';
import { Link } from 'wouter';
import type { DiaryEntry } from '../../record/diary-entry.ts';
import type { Stop } from '../../symptoms/may-exercise.ts';
import { Notice } from '../parts/notice.tsx';
import { usePerson } from '../people/person-context.tsx';
import { useWords } from '../words/words-context.tsx';
import { entryNow } from './entry-now.ts';
import './stop-notice.css';

interface StopNoticeProps {
  readonly stop: Stop;
  readonly add: (entries: readonly DiaryEntry[]) => Promise<boolean>;
}

/** Why no set may be started, whom to call, and the one way back: a clinician has seen the person, said explicitly and kept. */
export function StopNotice({ stop, add }: StopNoticeProps) {
  const { day, start, people } = useWords();
  const isOfPerson = usePerson() !== null;
  // A person's record speaks to whoever treats them.
  const said = isOfPerson ? people.person.stop : day.stop;
  const flags = isOfPerson ? people.person.flags : day.questions.flags;
  const [asking, setAsking] = useState(false);
  const [note, setNote] = useState('');
  const urgency = stop.urgency ?? 'weakness';
  return (
    <section className="day-stop">
      <Notice icon="warning" look="fault" alert>
        <h2>{said.title[urgency]}</h2>
        <p className="day-stop-todo">{said.todo[urgency]}</p>
        {stop.flags.length > 0 ? (
          <>
            <p>{said.signs}</p>
            <ul>
              {stop.flags.map((flag) => (
                <li key={flag}>{flags[flag]}</li>
              ))}
            </ul>
          </>
        ) : null}
        <p>
          <Link href="/urgent" className="urgent-link">
            {start.redFlagsLink}
          </Link>
        </p>
      </Notice>
      {asking ? (
        <form
          className="day-cleared"
          onSubmit={(event) => {
            event.preventDefault();
            void add([{ ...entryNow(), kind: 'clearance', note: note.trim() }]);
          }}
        >
          <p>
            <strong>{said.clearedAsk}</strong>
          </p>
          <label>
            {said.clearedNote}
            <textarea value={note} rows={2} maxLength={400} onChange={(event) => setNote(event.currentTarget.value)} />
          </label>
          <div className="day-actions">
            <button type="submit" className="button">
              {said.clearedYes}
            </button>
            <button type="button" className="button" onClick={() => setAsking(false)}>
              {said.clearedNo}
            </button>
          </div>
        </form>
      ) : (
        <button type="button" className="button" onClick={() => setAsking(true)}>
          {said.cleared}
        </button>
      )}
    </section>
  );
}
