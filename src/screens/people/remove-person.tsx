import { useEffect, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import type { Person } from '../../record/person.ts';
import { DayProblem } from '../day/day-problem.tsx';
import type { Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { useWords } from '../words/words-context.tsx';

/** Removes somebody with all that is theirs, after a second question. */
export function RemovePerson({ person: { id, name } }: { readonly person: Person }) {
  const { people } = useServices();
  const words = useWords().people.person;
  const [, navigate] = useLocation();
  const [asking, setAsking] = useState(false);
  const [problem, setProblem] = useState<Problem | null>(null);
  const no = useRef<HTMLButtonElement>(null);
  // What was pressed is gone; the harmless answer comes first.
  useEffect(() => {
    if (asking) no.current?.focus();
  }, [asking]);
  if (!asking) {
    return (
      <button type="button" className="button" data-look="quiet" onClick={() => setAsking(true)}>
        {words.remove}
      </button>
    );
  }
  const remove = async () => {
    const removed = await people.remove(id);
    if (removed.ok) navigate('~/people', { replace: true });
    else setProblem(removed.error);
  };
  return (
    <div className="person-remove" role="alert">
      <DayProblem problem={problem} />
      <p>
        <strong>{words.removeAsk(name)}</strong>
      </p>
      <div className="person-actions">
        <button ref={no} type="button" className="button" onClick={() => setAsking(false)}>
          {words.removeNo}
        </button>
        <button type="button" className="button" data-look="stop" onClick={() => void remove()}>
          {words.removeYes}
        </button>
      </div>
    </div>
  );
}
