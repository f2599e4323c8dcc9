import { useEffect, useRef } from 'react';
import { useWords } from '../words/words-context.tsx';
import './beat-bar.css';
import { wantsLessMotion } from './less-motion.ts';
import { useRun } from './run-context.tsx';

/** How long the movement under way has been held, against how long it is to be. Painted outside of React. */
export function HoldTimer({ holdS }: { readonly holdS: number }) {
  const { set } = useWords();
  const run = useRun();
  const word = useRef<HTMLSpanElement>(null);
  const fill = useRef<HTMLSpanElement>(null);
  useEffect(
    () =>
      run.moment.subscribe(({ heldMs }, before) => {
        if (heldMs === before.heldMs || !word.current || !fill.current) return;
        const seconds = Math.min(holdS, Math.floor((heldMs ?? 0) / 1000));
        word.current.textContent = heldMs !== null && seconds >= holdS ? set.holdDone : set.holdFor(seconds, holdS);
        // Second by second, for whom motion disturbs.
        const shownS = wantsLessMotion() ? seconds : (heldMs ?? 0) / 1000;
        fill.current.style.inlineSize = `${Math.min(100, (100 * shownS) / holdS)}%`;
      }),
    [run, holdS, set],
  );
  return (
    <div className="hold">
      <span className="hold-word numbers" ref={word}>
        {set.holdFor(0, holdS)}
      </span>
      <span className="hold-way" aria-hidden="true">
        <span ref={fill} />
      </span>
    </div>
  );
}
