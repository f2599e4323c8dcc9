import { prescribedWords } from '../day/prescribed-words.ts';
import { setTold } from '../glide/glide-told.ts';
import { limbsOf } from '../parts/limb-words.ts';
import { whenIn } from '../parts/when.ts';
import type { ShownSet } from '../services.ts';
import { StoredSetLine } from '../start/stored-set-line.tsx';
import { useGlideWords } from '../words/glide-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import { editSummary } from './edit-summary.ts';
import type { SetRow } from './set-rows.ts';

/** What a hand changed of it, in words; nothing when nothing. */
function Edits({ set }: { readonly set: ShownSet }) {
  const { sets } = useWords().review;
  const found = editSummary(set);
  if (!found) return null;
  const { struck, added, of } = found;
  const parts = [...(struck > 0 ? [sets.struck(struck)] : []), ...(added > 0 ? [sets.added(added)] : [])].join(', ');
  return (
    <strong className="set-line-state">
      {' '}
      · {sets.changed(struck + added, of)}: {parts}
    </strong>
  );
}

/** What foot and head did together; nothing of other exercises. */
function Glide({ set }: { readonly set: ShownSet }) {
  const words = useGlideWords();
  const { locale } = useWords();
  const glide = set.result?.glide;
  return glide ? <> · {setTold(glide, words, locale).join(' · ')}</> : null;
}

/** One set of the review's list. A measured one leads to its page, with its curve and repetitions. */
export function SetRowLine({ row }: { readonly row: SetRow }) {
  const words = useWords();
  if (row.kind === 'measured') {
    return (
      <StoredSetLine set={row.set}>
        <Glide set={row.set} />
        <Edits set={row.set} />
      </StoredSetLine>
    );
  }
  return (
    <div className="set-line">
      <span className="set-line-what">
        <strong>{prescribedWords(row.exercise, words).plural}</strong>, {limbsOf(row.exercise, words)[row.side].legLower}
        <span className="soft small">
          {whenIn(words.locale, row.at)} · {words.review.sets.byHand}
        </span>
      </span>
      <span className="set-line-count numbers">{row.reps}</span>
    </div>
  );
}
