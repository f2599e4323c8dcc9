import { useState } from 'react';
import type { Result } from '../../result.ts';
import type { Problem } from '../services.ts';

/** A call on the lock that takes its time: how far it is, and what went wrong. */
export interface LockCall {
  /** Percent of all records; null: nothing is under way, or it has not begun with them. */
  readonly percent: number | null;
  readonly busy: boolean;
  readonly problem: Problem | null;
  /** @returns whether it went well */
  readonly start: (call: (onProgress: (share: number) => void) => Promise<Result<null, Problem>>) => Promise<boolean>;
}

export function useLockCall(): LockCall {
  const [busy, setBusy] = useState(false);
  const [percent, setPercent] = useState<number | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  return {
    busy,
    percent,
    problem,
    async start(call) {
      setBusy(true);
      setProblem(null);
      const done = await call((share) => setPercent(Math.round(share * 100)));
      setBusy(false);
      setPercent(null);
      if (!done.ok) setProblem(done.error);
      return done.ok;
    },
  };
}
