import { useEffect, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { PRESCRIBED_EXERCISE_IDS, type PrescribedExercise, type PrescribedExerciseId } from '../../dose/prescribed-exercise.ts';
import type { Prescription } from '../../dose/prescription.ts';
import { startingDose } from '../../dose/starting-doses.ts';
import type { Side } from '../../pose/landmarks.ts';
import { newId } from '../../record/new-id.ts';
import { OptionCards } from '../choose/option-cards.tsx';
import { DayProblem } from '../day/day-problem.tsx';
import { entryNow } from '../day/entry-now.ts';
import { prescribedWords } from '../day/prescribed-words.ts';
import { useDay } from '../day/use-day.ts';
import { Page } from '../parts/page.tsx';
import { useWords } from '../words/words-context.tsx';
import { LineEditor } from './line-editor.tsx';
import { lineFault, linesOf, type PlanLines } from './plan-line.ts';
import './plan-screen.css';
import { SelfCheckFields } from './self-check-fields.tsx';

const LEGS = { left: ['left'], right: ['right'], both: ['left', 'right'] } as const satisfies Record<string, readonly Side[]>;
type Legs = keyof typeof LEGS;

const legsOf = (sides: readonly Side[]): Legs => (sides.length > 1 ? 'both' : (sides[0] ?? 'left'));

interface PlanLineProps {
  readonly exercise: PrescribedExerciseId;
  /** Null: not taken into the plan. */
  readonly line: PrescribedExercise | null;
  readonly onChange: (line: PrescribedExercise | null) => void;
}

/** One exercise to take into the plan, with its dose and all that can be changed of it. */
function PlanLine({ exercise, line, onChange }: PlanLineProps) {
  const words = useWords();
  const { name, about } = prescribedWords(exercise, words);
  const offered = line ?? startingDose(exercise, '', []);
  return (
    <li className="plan-item" data-chosen={line !== null}>
      <label className="plan-line">
        <input
          type="checkbox"
          checked={line !== null}
          onChange={(event) => onChange(event.currentTarget.checked ? startingDose(exercise, newId(), []) : null)}
        />
        <span>
          <strong>{name}</strong>
          <span className="soft small">{about}</span>
          <span className="small">
            {words.day.dose(offered.start.repsASet, offered.start.holdS)}, {words.plan.setsADay(offered.start.setsADay)}
          </span>
        </span>
      </label>
      {line ? <LineEditor line={line} onChange={onChange} /> : null}
    </li>
  );
}

/** What the plan begins with: the one that holds, unless it is the invented one; else the usual first exercise. */
interface Draft {
  readonly revised: Prescription | null;
  readonly legs: Legs;
  readonly lines: PlanLines;
  readonly selfChecks: Prescription['selfChecks'];
}

/** The L5 root's own muscles, weekly. Common practice. */
const USUAL_CHECKS: Prescription['selfChecks'] = { checks: ['big-toe', 'heel-walk'], sides: ['left', 'right'], everyDays: 7 };

const NEW_DRAFT = (): Draft => ({
  revised: null,
  legs: 'left',
  lines: { 'foot-tap': startingDose('foot-tap', newId(), []) },
  selfChecks: USUAL_CHECKS,
});

/** A plan of one's own, from the usual starting doses or from the plan that holds, until the therapist makes one. */
export function PlanScreen() {
  const { plan, sides, app, handOver } = useWords();
  const { log, today, problem, add } = useDay();
  const [, navigate] = useLocation();
  const [draft, setDraft] = useState<Draft | null>(null);
  useEffect(() => {
    if (draft || (!log && !problem)) return;
    const own = today?.prescription.origin === 'own' ? today.prescription : null;
    const [first] = own?.items ?? [];
    setDraft(
      own && log && today && first
        ? { revised: own, legs: legsOf(first.sides), lines: linesOf(own, log, today.day), selfChecks: own.selfChecks }
        : NEW_DRAFT(),
    );
  }, [draft, log, today, problem]);
  if (!draft) return <p className="heard">{app.loading}</p>;
  const { legs, lines, revised, selfChecks } = draft;
  const items = PRESCRIBED_EXERCISE_IDS.flatMap((exercise) => {
    const line = lines[exercise];
    return line ? [{ ...line, sides: LEGS[legs] }] : [];
  });
  const faulty = items.some((item) => lineFault(item) !== null);
  const save = async () => {
    const saved = await add([
      {
        ...entryNow(),
        kind: 'prescription',
        by: { role: 'patient', name: '' },
        revises: (revised ?? today?.prescription)?.id ?? null,
        items,
        selfChecks,
      },
    ]);
    if (saved) navigate('/today');
  };
  return (
    <Page className="plan" title={plan.title} lead={plan.lead} back="/today">
      <DayProblem problem={problem} />
      <form
        className="plan-parts"
        onSubmit={(event) => {
          event.preventDefault();
          if (items.length > 0 && !faulty) void save();
        }}
      >
        <OptionCards
          legend={plan.side}
          name="plan-side"
          options={(['left', 'right', 'both'] as const).map((value) => ({
            value,
            name: value === 'both' ? plan.both : sides[value].leg,
          }))}
          chosen={legs}
          onChoose={(value) => setDraft({ ...draft, legs: value })}
        />
        <fieldset className="plan-exercises">
          <legend>{plan.exercises}</legend>
          <ul>
            {PRESCRIBED_EXERCISE_IDS.map((exercise) => (
              <PlanLine
                key={exercise}
                exercise={exercise}
                line={lines[exercise] ?? null}
                onChange={(line) => {
                  const { [exercise]: _, ...others } = lines;
                  setDraft({ ...draft, lines: line ? { ...others, [exercise]: line } : others });
                }}
              />
            ))}
          </ul>
        </fieldset>
        <SelfCheckFields checks={selfChecks} onChange={(changed) => setDraft({ ...draft, selfChecks: changed })} />
        <p className="soft">{items.length === 0 ? plan.none : plan.basis}</p>
        <button type="submit" className="button" data-look="main" disabled={items.length === 0 || faulty}>
          {plan.save}
        </button>
        <Link href="/take" className="button">
          {handOver.take.open}
        </Link>
      </form>
    </Page>
  );
}
