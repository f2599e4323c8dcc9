import { useEffect, useState } from 'react';
import { useLocation } from 'wouter';
import type { TodayLine } from '../../dose/today-line.ts';
import type { DiaryEntry } from '../../record/diary-entry.ts';
import { Icon } from '../parts/icon.tsx';
import { Page } from '../parts/page.tsx';
import type { Problem } from '../services.ts';
import { useWords } from '../words/words-context.tsx';
import './by-hand-screen.css';
import { DayProblem } from './day-problem.tsx';
import { entryNow } from './entry-now.ts';
import { lineOf } from './line-of.ts';
import { prescribedWords } from './prescribed-words.ts';
import { useDay } from './use-day.ts';

interface CountingProps {
  readonly line: TodayLine;
  readonly problem: Problem | null;
  readonly add: (entries: readonly DiaryEntry[]) => Promise<boolean>;
}

function Counting({ line, problem, add }: CountingProps) {
  const words = useWords();
  const { day, sides } = words;
  const [, navigate] = useLocation();
  const [reps, setReps] = useState(0);
  const { item, side, dose } = line;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      // A button that has the focus answers the space bar itself.
      if (event.key !== ' ' || event.repeat || event.target instanceof HTMLButtonElement) return;
      event.preventDefault();
      setReps((n) => n + 1);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
  const keep = async () => {
    const kept = await add([
      { ...entryNow(), kind: 'hand-set', exercise: item.exercise, side, itemId: item.id, reps, counted: 'by-hand' },
    ]);
    if (kept) navigate('/today');
  };
  return (
    <Page
      className="by-hand"
      title={`${prescribedWords(item.exercise, words).plural}, ${sides[side].legLower}`}
      lead={day.dose(dose.repsASet, dose.holdS)}
      back="/today"
    >
      <div className="by-hand-parts">
        <DayProblem problem={problem} />
        <button type="button" className="by-hand-count" onClick={() => setReps((n) => n + 1)}>
          <span className="by-hand-number numbers" aria-live="polite">
            {reps}
          </span>
          <span className="by-hand-one">
            <Icon name="plus" size={36} />
            {day.byHand.one}
          </span>
        </button>
        <p className="soft">{day.byHand.keys}</p>
        <div className="day-actions">
          <button type="button" className="button" disabled={reps === 0} onClick={() => setReps((n) => Math.max(0, n - 1))}>
            {day.byHand.undo}
          </button>
          <button type="button" className="button" data-look="main" disabled={reps === 0} onClick={() => void keep()}>
            {day.byHand.done}
          </button>
        </div>
      </div>
    </Page>
  );
}

/** A set without the camera: one huge button, or the space bar. */
export function ByHandScreen({ itemId, side }: { readonly itemId: string; readonly side: string }) {
  const { day, app } = useWords();
  const { log, today, problem, add } = useDay();
  // What is being counted stays, also when the day's plan is looked at anew meanwhile.
  const [line, setLine] = useState<TodayLine | null>(null);
  const found = today && today.gate.kind === 'may' && today.questions.length === 0 ? lineOf(today, itemId, side) : null;
  useEffect(() => {
    if (found && !line) setLine(found);
  }, [found, line]);
  if (line) return <Counting line={line} problem={problem} add={add} />;
  if (!log && !problem) return <p className="heard">{app.loading}</p>;
  return (
    <Page className="by-hand" title={day.go.notDue} back="/today">
      <DayProblem problem={problem} />
    </Page>
  );
}
