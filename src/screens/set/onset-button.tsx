import { useGlideSetWords } from '../words/glide-set-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import './onset-button.css';
import type { SetPlan } from '../services.ts';
import { useRun, useRunState } from './run-context.tsx';
import { isGlide, ONSET_STAGES } from './signal.ts';

/** The one big button that says where symptoms begin; in a set of glides, that they rise. */
export function OnsetButton({ plan }: { readonly plan: Pick<SetPlan, 'exercise' | 'pictures'> }) {
  const { set } = useWords();
  const { symptoms } = useGlideSetWords();
  const camera = plan.pictures.kind === 'camera';
  const asked = isGlide(plan) ? symptoms : set.onset;
  const run = useRun();
  const marked = useRunState((s) => s.onsetMarked);
  const possible = useRunState((s) => ONSET_STAGES.includes(s.stage)) && !marked;
  return (
    <button type="button" className="button set-onset" onClick={run.signal} disabled={!possible}>
      {marked ? set.onsetMarked : asked}
      {marked ? null : <span className="set-stop-keys">{set.signalKeys(camera)}</span>}
    </button>
  );
}
