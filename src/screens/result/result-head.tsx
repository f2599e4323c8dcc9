import { editedCount, editedReps } from '../../record/rep-edit.ts';
import { ShareCard } from '../glide/share-card.tsx';
import { exerciseWords } from '../parts/exercise-words.ts';
import { Figure } from '../parts/figure.tsx';
import type { ShownSet } from '../services.ts';
import { useWords } from '../words/words-context.tsx';
import { degreesIn } from './degrees.ts';
import { keptSummary } from './kept-summary.ts';
import { secondsIn } from './seconds.ts';
import './result-head.css';

/** The set in three numbers: how many of the dose, how far, how many too small. */
export function ResultHead({ set }: { readonly set: ShownSet }) {
  const { result, locale, start, exercises, compare } = useWords();
  const degrees = degreesIn(locale);
  const summary = keptSummary(set);
  const far = summary ? result.rangeValue(degrees(summary.medianRangeDeg), degrees(summary.uncertaintyDeg)) : result.noRange;
  const upMs = summary?.medianUpMs ?? null;
  const count = editedCount(set);
  const glide = set.result?.glide ?? null;
  const onset = set.result?.onset ?? null;
  const measured = set.reps.filter((rep) => rep.complete).length;
  const small = editedReps(set).filter((r) => r.kind === 'measured' && !r.struck && !r.rep.complete).length;
  return (
    <div className="result-head">
      <dl className="result-numbers">
        <div className="result-count">
          <dt>{set.targetReps !== null && count >= set.targetReps ? result.reached : result.countedLabel}</dt>
          <dd className="numbers">{start.countOf(count, set.targetReps)}</dd>
        </div>
        {glide ? (
          <ShareCard glide={glide} />
        ) : upMs === null ? (
          <div>
            <dt>{result.range(exerciseWords(set, exercises).angle)}</dt>
            <dd className="numbers">{summary ? <Figure>{far}</Figure> : far}</dd>
            <dd className="soft small">{result.rangeHint}</dd>
          </div>
        ) : (
          <div>
            <dt>{result.upUsually}</dt>
            <dd className="numbers">{compare.within.holdValue(secondsIn(locale)(upMs))}</dd>
            <dd className="soft small">{result.upHint(far)}</dd>
          </div>
        )}
        <div>
          <dt>{result.smallLabel}</dt>
          <dd className="numbers">{small}</dd>
          <dd className="soft small">{result.smallHint}</dd>
        </div>
      </dl>
      {onset ? (
        <p>{result.onset((onset.tMs / 1000).toFixed(1), onset.angleDeg === null ? null : degrees(onset.angleDeg))}</p>
      ) : null}
      {set.edits.length > 0 ? (
        <p className="result-changed" role="status">
          {result.changed(measured, count)}
        </p>
      ) : null}
    </div>
  );
}
