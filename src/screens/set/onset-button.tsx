import { useWords } from '../words/words-context.tsx';
import './onset-button.css';
import { useRun, useRunState } from './run-context.tsx';
import { ONSET_STAGES } from './signal.ts';

/** The one big button that says where symptoms begin. */
export function OnsetButton({ camera }: { readonly camera: boolean }) {
  const { set } = useWords();
  const run = useRun();
  const marked = useRunState((s) => s.onsetMarked);
  const possible = useRunState((s) => ONSET_STAGES.includes(s.stage)) && !marked;
  return (
    <button type="button" className="button set-onset" onClick={run.signal} disabled={!possible}>
      {marked ? set.onsetMarked : set.onset}
      {marked ? null : <span className="set-stop-keys">{set.signalKeys(camera)}</span>}
    </button>
  );
}
