import { useEffect, useState } from 'react';
import type { Persistence } from '../../record/persistence.ts';
import { useServices } from '../services-context.tsx';
import { useStoredWords } from '../words/stored-catalogues.ts';

/** Whether the browser keeps what is stored when the disk runs short, and the way to ask for it. */
export function KeepStorage() {
  const { keep } = useStoredWords();
  const { here } = useServices();
  const [state, setState] = useState<Persistence | null>(null);
  const [refused, setRefused] = useState(false);
  useEffect(() => void here.persistence().then(setState), [here]);
  const ask = async () => {
    const answer = await here.askToKeep();
    setState(answer);
    setRefused(answer === 'not-kept');
  };
  return (
    <section>
      <h2>{keep.title}</h2>
      <p>{state === null ? null : keep.states[state]}</p>
      {state === 'not-kept' ? (
        <button type="button" className="button" onClick={() => void ask()}>
          {keep.ask}
        </button>
      ) : null}
      <p role="status">{refused ? keep.refused : null}</p>
    </section>
  );
}
