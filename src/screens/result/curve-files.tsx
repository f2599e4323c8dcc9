import { saveFile } from '../parts/save-file.ts';
import type { ShownSet } from '../services.ts';
import { useWords } from '../words/words-context.tsx';

/** What makes the files is loaded with the first one. */
async function save(set: ShownSet, kind: 'csv' | 'json'): Promise<void> {
  if (!set.result) return;
  const { angleFile, angleTable } = await import('../../record/angle-file.ts');
  const of = { result: set.result, definition: set.definition ?? null, startedAt: set.startedAt };
  const name = `evenside-angles-${set.startedAt.slice(0, 19).replaceAll(':', '-')}.${kind}`;
  if (kind === 'csv') saveFile(name, angleTable(of), 'text/csv;charset=utf-8');
  else saveFile(name, `${JSON.stringify(angleFile(of))}\n`, 'application/json');
}

/** Saves the angle of every picture of a set, for other programs. */
export function CurveFiles({ set }: { readonly set: ShownSet }) {
  const { result } = useWords();
  return (
    <div className="result-curve-files">
      {(['csv', 'json'] as const).map((kind) => (
        <button key={kind} type="button" className="button" data-look="quiet" onClick={() => void save(set, kind)}>
          {result.curveFile[kind]}
        </button>
      ))}
    </div>
  );
}
