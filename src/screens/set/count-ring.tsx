import { useWords } from '../words/words-context.tsx';
import './count-ring.css';
import { useRunState } from './run-context.tsx';

const RADIUS = 90;
const AROUND = 2 * Math.PI * RADIUS;

/** The count, to be read from three metres, with the dose as a ring that closes; small movements apart. */
export function CountRing() {
  const { set } = useWords();
  const count = useRunState((s) => s.count);
  const small = useRunState((s) => s.partialCount);
  const target = useRunState((s) => s.plan?.targetReps ?? null);
  const share = target ? Math.min(1, count / target) : 0;
  return (
    <div className="count-panel">
      <div className="count-ring">
        <svg viewBox="0 0 200 200" aria-hidden="true">
          <circle className="count-ring-whole" cx="100" cy="100" r={RADIUS} />
          {share > 0 ? (
            <circle
              className="count-ring-done"
              cx="100"
              cy="100"
              r={RADIUS}
              strokeDasharray={`${AROUND * share} ${AROUND}`}
              transform="rotate(-90 100 100)"
            />
          ) : null}
        </svg>
        <p className="count-words" aria-live="polite" aria-atomic="true">
          <span className="heard">{set.count} </span>
          <span className="count-number numbers">{count}</span>
          {target === null ? null : <span className="count-target numbers"> {set.ofTarget(target)}</span>}
        </p>
      </div>
      <p className="count-small numbers" data-none={small === 0} aria-live="polite">
        {small === 0 ? '' : set.small(small)}
      </p>
    </div>
  );
}
