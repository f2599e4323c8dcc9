import { DayProblem } from '../day/day-problem.tsx';
import type { LockCall } from './use-lock-call.ts';
import { useLockWords } from './use-lock-words.ts';

/** How far a call on the lock is, or what went wrong with it. */
export function CallState({ call }: { readonly call: LockCall }) {
  const lock = useLockWords();
  return (
    <>
      <DayProblem problem={call.problem} />
      <p className="soft" role="status">
        {call.busy ? lock.working(call.percent ?? 0) : null}
      </p>
    </>
  );
}
