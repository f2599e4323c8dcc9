import { useState } from 'react';
import { useLocation } from 'wouter';
import { PRESCRIBED_EXERCISE_IDS, type PrescribedExerciseId } from '../../dose/prescribed-exercise.ts';
import { startingDose } from '../../dose/starting-doses.ts';
import type { Side } from '../../pose/landmarks.ts';
import { newId } from '../../record/new-id.ts';
import { OptionCards } from '../choose/option-cards.tsx';
import { Page } from '../parts/page.tsx';
import { useWords } from '../words/words-context.tsx';
import { DayProblem } from './day-problem.tsx';
import { entryNow } from './entry-now.ts';
import './plan-screen.css';
import { prescribedWords } from './prescribed-words.ts';
import { useDay } from './use-day.ts';

const LEGS = { left: ['left'], right: ['right'], both: ['left', 'right'] } as const satisfies Record<string, readonly Side[]>;

interface PlanLineProps {
  readonly exercise: PrescribedExerciseId;
  readonly chosen: boolean;
  readonly onChange: (chosen: boolean) => void;
}

/** One exercise to take into the plan, with the dose it begins with. */
function PlanLine({ exercise, chosen, onChange }: PlanLineProps) {
  const words = useWords();
  const { name, about } = prescribedWords(exercise, words);
  const { start } = startingDose(exercise, '', []);
  return (
    <li>
      <label className="plan-line">
        <input type="checkbox" checked={chosen} onChange={(event) => onChange(event.currentTarget.checked)} />
        <span>
          <strong>{name}</strong>
          <span className="soft small">{about}</span>
          <span className="small">
            {words.day.dose(start.repsASet, start.holdS)}, {words.day.plan.setsADay(start.setsADay)}
          </span>
        </span>
      </label>
    </li>
  );
}

/** A plan of one's own from the usual starting doses, until the therapist makes one. */
export function PlanScreen() {
  const { day, sides } = useWords();
  const { today, problem, add } = useDay();
  const [, navigate] = useLocation();
  const [legs, setLegs] = useState<keyof typeof LEGS>('left');
  const [chosen, setChosen] = useState<readonly PrescribedExerciseId[]>(['foot-tap']);
  const save = async () => {
    const saved = await add([
      {
        ...entryNow(),
        kind: 'prescription',
        by: { role: 'patient', name: '' },
        revises: today?.prescription.id ?? null,
        items: chosen.map((exercise) => startingDose(exercise, newId(), LEGS[legs])),
        selfChecks: { checks: ['big-toe', 'heel-walk'], sides: ['left', 'right'], everyDays: 7 },
      },
    ]);
    if (saved) navigate('/today');
  };
  return (
    <Page className="plan" title={day.plan.title} lead={day.plan.lead} back="/today">
      <DayProblem problem={problem} />
      <form
        className="plan-parts"
        onSubmit={(event) => {
          event.preventDefault();
          if (chosen.length > 0) void save();
        }}
      >
        <OptionCards
          legend={day.plan.side}
          name="plan-side"
          options={(['left', 'right', 'both'] as const).map((value) => ({
            value,
            name: value === 'both' ? day.plan.both : sides[value].leg,
          }))}
          chosen={legs}
          onChoose={setLegs}
        />
        <fieldset className="plan-exercises">
          <legend>{day.plan.exercises}</legend>
          <ul>
            {PRESCRIBED_EXERCISE_IDS.map((exercise) => (
              <PlanLine
                key={exercise}
                exercise={exercise}
                chosen={chosen.includes(exercise)}
                onChange={(wanted) =>
                  setChosen(PRESCRIBED_EXERCISE_IDS.filter((id) => (id === exercise ? wanted : chosen.includes(id))))
                }
              />
            ))}
          </ul>
        </fieldset>
        <p className="soft">{chosen.length === 0 ? day.plan.none : day.plan.basis}</p>
        <button type="submit" className="button" data-look="main" disabled={chosen.length === 0}>
          {day.plan.save}
        </button>
      </form>
    </Page>
  );
}
