import { Link } from 'wouter';
import { editedCount } from '../../record/rep-edit.ts';
import { prescribedWords } from '../day/prescribed-words.ts';
import { exerciseWords } from '../parts/exercise-words.ts';
import { Icon } from '../parts/icon.tsx';
import { whenIn } from '../parts/when.ts';
import { degreesIn } from '../result/degrees.ts';
import { keptSummary } from '../result/kept-summary.ts';
import type { ShownSet } from '../services.ts';
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

function MeasuredLine({ set }: { readonly set: ShownSet }) {
  const { locale, exercises, sides, start, result } = useWords();
  const summary = keptSummary(set);
  const degrees = degreesIn(locale);
  return (
    <Link href={`/set/${set.id}`} className="set-line">
      <span className="set-line-what">
        <strong>{exerciseWords(set, exercises).plural}</strong>, {sides[set.side].legLower}
        <span className="soft small">
          {whenIn(locale, set.startedAt)}
          {set.source === 'camera' ? '' : ` · ${result.sources[set.source]}`}
          {set.state === 'finished' ? null : ` · ${set.state === 'running' ? start.running : start.interrupted}`}
          <Edits set={set} />
        </span>
      </span>
      <span className="set-line-range numbers soft">
        {summary ? result.rangeValue(degrees(summary.medianRangeDeg), degrees(summary.uncertaintyDeg)) : ''}
      </span>
      <span className="set-line-count numbers">{start.countOf(editedCount(set), set.targetReps)}</span>
      <Icon name="forward" />
    </Link>
  );
}

/** One set of the review's list. A measured one leads to its page, with its curve and repetitions. */
export function SetRowLine({ row }: { readonly row: SetRow }) {
  const words = useWords();
  if (row.kind === 'measured') return <MeasuredLine set={row.set} />;
  return (
    <div className="set-line">
      <span className="set-line-what">
        <strong>{prescribedWords(row.exercise, words).plural}</strong>, {words.sides[row.side].legLower}
        <span className="soft small">
          {whenIn(words.locale, row.at)} · {words.review.sets.byHand}
        </span>
      </span>
      <span className="set-line-count numbers">{row.reps}</span>
    </div>
  );
}
