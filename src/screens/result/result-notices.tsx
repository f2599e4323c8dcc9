import { editedCount } from '../../record/rep-edit.ts';
import { wayOf } from '../compare/comparable.ts';
import { Notice } from '../parts/notice.tsx';
import type { ShownSet } from '../services.ts';
import { useWords } from '../words/words-context.tsx';
import { UnstoredActions } from './unstored-actions.tsx';

/** What must be known before the numbers are read. */
export function ResultNotices({ set, onStored }: { readonly set: ShownSet; readonly onStored: (set: ShownSet) => void }) {
  const { result, problems, set: words } = useWords();
  const notStored = problems['not-stored']('');
  const warnings = set.result?.quality.warnings ?? [];
  return (
    <>
      {set.state === 'finished' ? null : (
        <Notice icon="warning" look="caution">
          <p>{result.interrupted}</p>
        </Notice>
      )}
      {set.onDisk ? null : (
        <Notice icon="warning" look="fault" title={notStored.title}>
          <p>{notStored.todo}</p>
          <UnstoredActions id={set.id} onStored={onStored} />
        </Notice>
      )}
      {editedCount(set) === 0 && set.edits.length === 0 ? (
        <Notice icon="warning" look="caution" title={result.nothing}>
          <p>{wayOf(set) === 'stickers' ? words.stickers.nothing : result.nothingTodo}</p>
        </Notice>
      ) : null}
      {warnings.length > 0 ? (
        <Notice icon="warning" look="caution" title={result.warningsTitle}>
          <ul>
            {warnings.map((warning) => (
              <li key={warning}>{result.warnings[warning]}</li>
            ))}
          </ul>
        </Notice>
      ) : null}
    </>
  );
}
