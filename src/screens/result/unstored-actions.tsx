import { useState } from 'react';
import { saveFile } from '../parts/save-file.ts';
import type { Problem, ShownSet } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { useWords } from '../words/words-context.tsx';

/** For a set that this page alone holds: try the disk again, or save it as a file. */
export function UnstoredActions({ id, onStored }: { readonly id: string; readonly onStored: (set: ShownSet) => void }) {
  const { kept, problems } = useWords();
  const services = useServices();
  const [problem, setProblem] = useState<Problem | null>(null);
  const store = async () => {
    setProblem(null);
    const stored = await services.store(id);
    if (stored.ok) onStored(stored.value);
    else setProblem(stored.error);
  };
  const save = async () => {
    const file = await services.fileOf(id);
    if (file.ok) saveFile(`${kept.fileName}.zip`, file.value, file.value.type);
    else setProblem(file.error);
  };
  const words = problem ? problems[problem.kind](problem.detail ?? '') : null;
  return (
    <>
      {/* That room is to be made stands above already. */}
      <p role="alert">{words ? (problem?.kind === 'store-full' ? words.title : `${words.title} ${words.todo}`) : null}</p>
      <div className="result-actions">
        <button type="button" className="button" data-look="main" onClick={() => void store()}>
          {kept.storeNow}
        </button>
        <button type="button" className="button" onClick={() => void save()}>
          {kept.saveFile}
        </button>
      </div>
    </>
  );
}
