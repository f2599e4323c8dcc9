import type { RepEdit } from '../../record/rep-edit.ts';
import { whenIn } from '../parts/when.ts';
import type { Words } from '../words/words.ts';
import { useWords } from '../words/words-context.tsx';
import './edit-list.css';

function saidOf(edit: RepEdit, { edits }: Words['review']): string {
  if (edit.kind === 'add') return edits.add;
  if (edit.rep.kind === 'measured') return edits[edit.kind](edit.rep.number);
  return edit.kind === 'strike' ? edits.strikeAdded : edits.restoreAdded;
}

/** Every change by hand with its moment, in the order in which they were made. Nothing when there is none. */
export function EditList({ edits }: { readonly edits: readonly RepEdit[] }) {
  const { review, locale } = useWords();
  if (edits.length === 0) return null;
  return (
    <section className="edit-list" aria-labelledby="edits-title">
      <h2 id="edits-title">{review.edits.title}</h2>
      <ol>
        {edits.map((edit) => (
          <li key={edit.id}>
            <span className="soft numbers">{whenIn(locale, edit.at)}:</span> {saidOf(edit, review)}
            {edit.note === undefined ? '' : ` (${edit.note})`}
          </li>
        ))}
      </ol>
      <p className="soft small">{review.edits.kept}</p>
    </section>
  );
}
