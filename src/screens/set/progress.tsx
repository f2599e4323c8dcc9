import { useEffect, useRef } from 'react';
import type { Ms } from '../../units.ts';
import { ProgressBar } from '../parts/progress-bar.tsx';
import { useWords } from '../words/words-context.tsx';
import './progress.css';
import { useRun, useRunState } from './run-context.tsx';

/** How much of a file is measured. */
export function FileProgress({ durationMs }: { readonly durationMs: Ms }) {
  const { set } = useWords();
  const run = useRun();
  const bar = useRef<HTMLProgressElement>(null);
  const text = useRef<HTMLSpanElement>(null);
  useEffect(
    () =>
      run.moment.subscribe(({ tMs }) => {
        const share = durationMs > 0 ? Math.min(1, tMs / durationMs) : 0;
        if (bar.current) bar.current.value = share;
        if (text.current) text.current.textContent = set.measured(share);
      }),
    [run, durationMs, set],
  );
  return (
    <div className="progress">
      <ProgressBar ref={bar} share={0} name={set.progress} />
      <span ref={text} className="numbers small">
        {set.measured(0)}
      </span>
    </div>
  );
}

/** How much of the pose model is here; once it is here it starts, which takes a moment that nobody can tell. */
export function LoadingProgress() {
  const { set } = useWords();
  const loaded = useRunState((s) => s.loaded);
  return (
    <div className="progress">
      <ProgressBar share={loaded < 1 ? loaded : null} name={set.loadingModel} />
    </div>
  );
}
