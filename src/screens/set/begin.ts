import { useLocation } from 'wouter';
import { EXAMPLE_PLAN } from '../choose/plan.ts';
import type { SetPlan } from '../services.ts';
import { useRun } from './run-context.tsx';

/** Begins a set and goes to its screen. */
export function useBegin(): (plan: SetPlan) => void {
  const run = useRun();
  const [, navigate] = useLocation();
  return (plan) => {
    run.begin(plan);
    navigate('/run');
  };
}

/** Begins the recorded example. */
export function useBeginExample(): () => void {
  const begin = useBegin();
  return () => begin(EXAMPLE_PLAN);
}
