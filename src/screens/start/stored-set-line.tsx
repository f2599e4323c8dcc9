import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { editedCount } from '../../record/rep-edit.ts';
import { exerciseWords } from '../parts/exercise-words.ts';
import { Figure } from '../parts/figure.tsx';
import { Icon } from '../parts/icon.tsx';
import { limbsOf } from '../parts/limb-words.ts';
import { whenIn } from '../parts/when.ts';
import { degreesIn } from '../result/degrees.ts';
import { keptSummary } from '../result/kept-summary.ts';
import type { ShownSet } from '../services.ts';
import { useWords } from '../words/words-context.tsx';

interface StoredSetLineProps {
  readonly set: ShownSet;
  /** What else is to be said of it. */
  readonly children?: ReactNode;
}

/** One stored set: when, what, how many, how far. Leads to its result. */
export function StoredSetLine({ set, children }: StoredSetLineProps) {
  const words = useWords();
  const { locale, exercises, start, result } = words;
  const summary = keptSummary(set);
  const degrees = degreesIn(locale);
  return (
    <Link href={`/set/${set.id}`} className="set-line">
      <span className="set-line-what">
        <strong>{exerciseWords(set, exercises).plural}</strong>, {limbsOf(set.exercise, words)[set.side].legLower}
        <span className="soft small">
          {whenIn(locale, set.startedAt)}
          {set.source === 'camera' ? '' : ` · ${result.sources[set.source]}`}
          {set.state === 'finished' ? null : (
            <strong className="set-line-state"> · {set.state === 'running' ? start.running : start.interrupted}</strong>
          )}
          {children}
        </span>
      </span>
      <span className="set-line-range numbers soft">
        {summary ? <Figure>{result.rangeValue(degrees(summary.medianRangeDeg), degrees(summary.uncertaintyDeg))}</Figure> : null}
      </span>
      <span className="set-line-count numbers">{start.countOf(editedCount(set), set.targetReps)}</span>
      <Icon name="forward" />
    </Link>
  );
}
