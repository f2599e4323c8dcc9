import { useLocation } from 'wouter';
import { exerciseOf } from '../../exercises/catalogue.ts';
import { useChoices } from '../choose/choices.ts';
import { EXAMPLE_PLAN, planOf } from '../choose/plan.ts';
import { wayOf } from '../compare/comparable.ts';
import { useDay } from '../day/use-day.ts';
import type { ShownSet } from '../services.ts';
import { useBegin } from '../set/begin.ts';
import { useWords } from '../words/words-context.tsx';

/** Begins the same set again: with the camera, or the example; a file is chosen anew. @param main nothing else is asked first */
export function DoAgain({ set, main }: { readonly set: ShownSet; readonly main: boolean }) {
  const { result } = useWords();
  const begin = useBegin();
  const [, navigate] = useLocation();
  const { choices, choose } = useChoices();
  const { gate, questions, problem } = useDay();
  // Whether the day is stopped is known in an instant; without a diary nothing is stopped.
  const asking = set.source === 'camera' && !gate && !problem;
  const again = () => {
    // On a day that is stopped the reason, and the way out of it, stand there.
    if (gate?.kind === 'stopped' && set.source === 'camera') return navigate('/today');
    if (set.source === 'example') return begin(EXAMPLE_PLAN);
    const { exercise, side } = set;
    // An exercise of one's own is not among those that can be chosen.
    if (exercise === 'own') return navigate('/');
    const same = {
      exercise,
      side,
      by: exerciseOf(exercise).seenBy.length > 1 ? wayOf(set) : choices.by,
      targetReps: set.targetReps ?? choices.targetReps,
    };
    choose(same);
    // What must be asked first is asked on the way in.
    if (set.source === 'camera' && questions.length > 0) return navigate('/choose/camera');
    const plan = set.source === 'file' ? null : planOf('camera', { ...choices, ...same }, null);
    if (plan) begin(plan);
    else navigate('/choose/file');
  };
  return (
    <button type="button" className="button" data-look={main ? 'main' : undefined} disabled={asking} onClick={again}>
      {result.again}
    </button>
  );
}
