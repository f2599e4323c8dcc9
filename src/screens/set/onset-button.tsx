import { useEffect } from 'react';
import { useWords } from '../words/words-context.tsx';
import './onset-button.css';
import { ONSET_STAGES } from './run.ts';
import { useRun, useRunState } from './run-context.tsx';

/** Whether an element has its own use for the enter key. */
const takesEnter = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.matches('button, input, select, textarea, a, summary');

/** The one big button, and the enter key from anywhere, that says where symptoms begin. */
export function OnsetButton({ camera }: { readonly camera: boolean }) {
  const { set } = useWords();
  const run = useRun();
  const marked = useRunState((s) => s.onsetMarked);
  const possible = useRunState((s) => ONSET_STAGES.includes(s.stage)) && !marked;
  useEffect(() => {
    if (!possible) return;
    const onKey = (event: KeyboardEvent) => {
      if (event.repeat || event.key !== 'Enter' || takesEnter(event.target)) return;
      event.preventDefault();
      run.markOnset();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [possible, run]);
  return (
    <button type="button" className="button set-onset" onClick={run.markOnset} disabled={!possible}>
      {marked ? set.onsetMarked : set.onset}
      {marked ? null : (
        <span className="set-stop-keys">
          {set.onsetKeys}
          {camera ? `, ${set.handHint.marks}` : ''}
        </span>
      )}
    </button>
  );
}
