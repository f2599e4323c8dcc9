import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { Run } from './run.ts';
import type { RunState } from './run-state.ts';

export const RunContext = createContext<Run | null>(null);

/** @throws Error outside of a RunContext */
export function useRun(): Run {
  const run = useContext(RunContext);
  if (!run) throw new Error('useRun requires a RunContext, got none');
  return run;
}

/** One field of the running set. */
export const useRunState = <T,>(select: (state: RunState) => T): T => useStore(useRun().state, select);
