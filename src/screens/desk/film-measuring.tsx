import type { SetPlan } from '../services.ts';
import { Picture } from '../set/picture.tsx';
import { FileProgress, LoadingProgress } from '../set/progress.tsx';
import { useRun, useRunState } from '../set/run-context.tsx';
import { useStillWords } from '../words/still-catalogues.ts';

/** A film while it is measured as a whole, before it is looked at picture by picture. */
export function FilmMeasuring({ plan }: { readonly plan: SetPlan }) {
  const still = useStillWords();
  const run = useRun();
  const opening = useRunState((s) => s.stage === 'opening');
  const durationMs = useRunState((s) => s.opened?.durationMs ?? null);
  return (
    <div className="desk-live">
      <div className="desk-live-picture">
        <Picture plan={plan} unlabelled />
      </div>
      <div className="desk-marking">
        <p role="status">{still.measuringFilm}</p>
        {opening || durationMs === null ? <LoadingProgress /> : <FileProgress durationMs={durationMs} />}
        <button type="button" className="button" onClick={run.leave}>
          {still.cancel}
        </button>
      </div>
    </div>
  );
}
