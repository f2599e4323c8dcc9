import { useEffect, useState } from 'react';
import { isPrescribedExerciseId, type PrescribedExerciseId } from '../../dose/prescribed-exercise.ts';
import { startingDose } from '../../dose/starting-doses.ts';
import type { Today } from '../../dose/today.ts';
import type { Side } from '../../pose/landmarks.ts';
import { useChoices } from '../choose/choices.ts';
import { Page } from '../parts/page.tsx';
import { useWords } from '../words/words-context.tsx';
import { DayProblem } from './day-problem.tsx';
import { FirstQuestions } from './first-questions.tsx';
import { HandCount } from './hand-count.tsx';
import type { HandPlan } from './hand-plan.ts';
import { lineOf } from './line-of.ts';
import { StopNotice } from './stop-notice.tsx';
import { type DayInUse, useDay } from './use-day.ts';

/** Counting by hand, once it is known what. What is counted stays, also when the day is looked at anew meanwhile. */
function Counted({ found, back, inUse }: { readonly found: HandPlan | null; readonly back: string; readonly inUse: DayInUse }) {
  const { day, app } = useWords();
  const [plan, setPlan] = useState<HandPlan | null>(null);
  useEffect(() => {
    if (found && !plan) setPlan(found);
  }, [found, plan]);
  const { log, problem, add } = inUse;
  if (plan) return <HandCount plan={plan} back={back} problem={problem} add={add} />;
  if (!log && !problem) return <p className="heard">{app.loading}</p>;
  return (
    <Page className="hand-count" title={day.go.notDue} back={back}>
      <DayProblem problem={problem} />
    </Page>
  );
}

/** A set of the plan, as far as today has it and lets it begin. */
function planned(today: Today, itemId: string, side: string): HandPlan | null {
  const line = today.gate.kind === 'may' && today.questions.length === 0 ? lineOf(today, itemId, side) : null;
  return line && { exercise: line.item.exercise, side: line.side, itemId, dose: line.dose, tempoS: line.item.tempoS };
}

/** A set of the plan without the camera. */
export function ByHandScreen({ itemId, side }: { readonly itemId: string; readonly side: string }) {
  const inUse = useDay();
  return <Counted found={inUse.today && planned(inUse.today, itemId, side)} back="/today" inUse={inUse} />;
}

/** A set that nobody prescribed, without the camera; not on a day that is stopped. */
export function FreeByHandScreen({ exercise, side }: { readonly exercise: string; readonly side: string }) {
  const { day } = useWords();
  const inUse = useDay();
  const { gate, questions, problem, add, reload } = inUse;
  const repsASet = useChoices((s) => s.choices.targetReps);
  if (gate?.kind === 'stopped')
    return (
      <Page className="hand-count" title={day.title} back="/">
        <StopNotice stop={gate} add={add} />
      </Page>
    );
  const known = isPrescribedExerciseId(exercise) && (side === 'left' || side === 'right');
  if (known && questions.length > 0)
    return <FirstQuestions exercise={exercise} back="/" problem={problem} add={add} onNone={reload} />;
  const found = known && gate ? freePlan(exercise, side, repsASet) : null;
  return <Counted found={found} back="/" inUse={inUse} />;
}

function freePlan(exercise: PrescribedExerciseId, side: Side, repsASet: number): HandPlan {
  const { start, tempoS } = startingDose(exercise, '', [side]);
  return { exercise, side, itemId: null, dose: { repsASet, holdS: start.holdS }, tempoS };
}
