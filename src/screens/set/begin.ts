import { useLocation } from 'wouter';
import { EXAMPLE_PLAN } from '../choose/plan.ts';
import type { SetPlan } from '../services.ts';
import { useWaitingPlan } from '../stickers/waiting-plan.ts';
import { stickersOfPlan } from './by-stickers.ts';
import { useRun } from './run-context.tsx';

/** Begins a set and goes to its screen; before a set by stickers, to where they are shown. */
export function useBegin(): (plan: SetPlan) => void {
  const run = useRun();
  const [, navigate] = useLocation();
  return (plan) => {
    if (plan.pictures.kind !== 'example' && stickersOfPlan(plan)?.kind === 'find') {
      useWaitingPlan.setState({ plan });
      navigate('/stickers');
      return;
    }
    run.begin(plan);
    navigate('/run');
  };
}

/** Begins the recorded example. */
export function useBeginExample(): () => void {
  const begin = useBegin();
  return () => begin(EXAMPLE_PLAN);
}
