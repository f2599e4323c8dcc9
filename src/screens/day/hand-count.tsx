import { useCallback, useEffect, useState } from 'react';
import { useLocation } from 'wouter';
import type { HandSet } from '../../dose/done-set.ts';
import type { DiaryEntry } from '../../record/diary-entry.ts';
import { Icon } from '../parts/icon.tsx';
import { limbsOf } from '../parts/limb-words.ts';
import { Page } from '../parts/page.tsx';
import { useSpaceKey } from '../parts/use-space-key.ts';
import type { Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { hasKeys } from '../set/has-keys.ts';
import { useWords } from '../words/words-context.tsx';
import { BeatCount } from './beat-count.tsx';
import './hand-count.css';
import { DayProblem } from './day-problem.tsx';
import { entryNow } from './entry-now.ts';
import type { HandPlan } from './hand-plan.ts';
import { prescribedWords } from './prescribed-words.ts';

interface HandCountProps {
  readonly plan: HandPlan;
  readonly back: string;
  readonly problem: Problem | null;
  readonly add: (entries: readonly DiaryEntry[]) => Promise<boolean>;
}

/** One huge button, or the space bar. */
function Tapped({ reps, onOneMore }: { readonly reps: number; readonly onOneMore: () => void }) {
  const { byHand } = useWords().day;
  useSpaceKey(onOneMore);
  return (
    <>
      <button type="button" className="hand-count-panel" onClick={onOneMore}>
        <span className="hand-count-number numbers" aria-live="polite">
          {reps}
        </span>
        <span className="hand-count-one">
          <Icon name="plus" size={36} />
          {byHand.one}
        </span>
      </button>
      {hasKeys() ? <p className="soft">{byHand.keys}</p> : null}
    </>
  );
}

/** Counts a set without the camera: by tapping, or hands-free by a beat. */
export function HandCount({ plan, back, problem, add }: HandCountProps) {
  const words = useWords();
  const { day } = words;
  const { lock } = useServices();
  // A beat is counted without a touch.
  useEffect(() => lock.keepOpen(), [lock]);
  const [, navigate] = useLocation();
  const [reps, setReps] = useState(0);
  const [counted, setCounted] = useState<HandSet['counted']>('by-hand');
  const { exercise, side, itemId, dose } = plan;
  const oneMore = useCallback(() => setReps((n) => n + 1), []);
  const keep = async () => {
    const entry = entryNow();
    const kept = await add([{ ...entry, kind: 'hand-set', exercise, side, itemId, reps, counted }]);
    if (kept) navigate(`/feel/after/${entry.id}`);
  };
  const other = counted === 'by-hand' ? 'by-metronome' : 'by-hand';
  return (
    <Page
      className="hand-count"
      title={`${prescribedWords(exercise, words).plural}, ${limbsOf(exercise, words)[side].legLower}`}
      lead={day.dose(dose.repsASet, dose.holdS)}
      back={back}
    >
      <div className="hand-count-parts">
        <DayProblem problem={problem} />
        {counted === 'by-hand' ? (
          <Tapped reps={reps} onOneMore={oneMore} />
        ) : (
          <BeatCount plan={plan} reps={reps} onOneMore={oneMore} />
        )}
        <div className="day-actions">
          <button type="button" className="button" data-look="main" disabled={reps === 0} onClick={() => void keep()}>
            {day.byHand.done}
          </button>
          <button type="button" className="button" disabled={reps === 0} onClick={() => setReps((n) => Math.max(0, n - 1))}>
            {day.byHand.undo}
          </button>
          <button type="button" className="button" onClick={() => setCounted(other)}>
            {day.byHand.instead[other]}
          </button>
        </div>
      </div>
    </Page>
  );
}
