import { useState } from 'react';
import { useLocation } from 'wouter';
import type { Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { useWords } from '../words/words-context.tsx';
import './remove-set.css';

/** Deletes a set, asking once. */
export function RemoveSet({ id, onProblem }: { readonly id: string; readonly onProblem: (problem: Problem) => void }) {
  const { result } = useWords();
  const services = useServices();
  const [, navigate] = useLocation();
  const [asking, setAsking] = useState(false);
  if (!asking) {
    return (
      <button type="button" className="button" data-look="quiet" onClick={() => setAsking(true)}>
        {result.remove}
      </button>
    );
  }
  const remove = async () => {
    const removed = await services.remove(id);
    if (removed.ok) navigate('/', { replace: true });
    else {
      setAsking(false);
      onProblem(removed.error);
    }
  };
  return (
    <div className="remove-set" role="alert">
      <p>{result.removeSure}</p>
      <button type="button" className="button" data-look="stop" onClick={remove}>
        {result.removeYes}
      </button>
      <button type="button" className="button" onClick={() => setAsking(false)}>
        {result.removeNo}
      </button>
    </div>
  );
}
