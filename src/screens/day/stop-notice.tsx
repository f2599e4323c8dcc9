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
  const cleared = usePerson()
    ? people.person.cleared
    : { open: day.stop.cleared, ask: day.stop.clearedAsk, yes: day.stop.clearedYes };
  const [asking, setAsking] = useState(false);
  const [note, setNote] = useState('');
  const urgency = stop.urgency ?? 'weakness';
  return (
    <section className="day-stop">
      <Notice icon="warning" look="fault" alert>
        <h2>{day.stop.title[urgency]}</h2>
        <p className="day-stop-todo">{day.stop.todo[urgency]}</p>
        {stop.flags.length > 0 ? (
          <>
            <p>{day.stop.signs}</p>
            <ul>
              {stop.flags.map((flag) => (
                <li key={flag}>{day.questions.flags[flag]}</li>
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
            <strong>{cleared.ask}</strong>
          </p>
          <label>
            {day.stop.clearedNote}
            <textarea value={note} rows={2} maxLength={400} onChange={(event) => setNote(event.currentTarget.value)} />
          </label>
          <div className="day-actions">
            <button type="submit" className="button">
              {cleared.yes}
            </button>
            <button type="button" className="button" onClick={() => setAsking(false)}>
              {day.stop.clearedNo}
            </button>
          </div>
        </form>
      ) : (
        <button type="button" className="button" onClick={() => setAsking(true)}>
          {cleared.open}
        </button>
      )}
    </section>
  );
}
