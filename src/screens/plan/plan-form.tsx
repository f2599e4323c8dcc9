import { Link } from 'wouter';
import { PRESCRIBED_EXERCISE_IDS } from '../../dose/prescribed-exercise.ts';
import { OptionCards } from '../choose/option-cards.tsx';
import { usePerson } from '../people/person-context.tsx';
import { useWords } from '../words/words-context.tsx';
import { DeciderFields } from './decider-fields.tsx';
import { ExerciseCard } from './exercise-card.tsx';
import { lineFault } from './line-fault.ts';
import { itemsOfDraft, type PlanDraft, withAffected, withLegs, withTaken } from './plan-draft.ts';
import { SelfCheckFields } from './self-check-fields.tsx';

interface PlanFormProps {
  readonly draft: PlanDraft;
  readonly onChange: (draft: PlanDraft) => void;
  /** @param then where to go once it is kept */
  readonly onSave: (then: '/today' | '/plan/give') => void;
}

/** All of a plan: legs, exercises, checks of strength, who decides. Kept only when nothing of it is wrong. */
export function PlanForm({ draft, onChange, onSave }: PlanFormProps) {
  const { plan, sides, handOver, prescribe, people } = useWords();
  const isOfPerson = usePerson() !== null;
  const { affected, exercises, beyond, by, selfChecks } = draft;
  const items = itemsOfDraft(draft);
  const ready = items.length > 0 && items.every((item) => lineFault(item) === null);
  const isTherapist = by.role === 'therapist';
  return (
    <form
      className="plan-parts"
      onSubmit={(event) => {
        event.preventDefault();
        if (ready) onSave('/today');
      }}
    >
      <OptionCards
        legend={plan.side}
        hint={prescribe.legs.hint}
        name="plan-side"
        options={(['left', 'right', 'both'] as const).map((value) => ({
          value,
          name: value === 'both' ? plan.both : sides[value].leg,
        }))}
        chosen={affected}
        onChoose={(value) => onChange(withAffected(draft, value))}
      />
      <fieldset className="plan-exercises">
        <legend>{isOfPerson ? people.person.exercises : plan.exercises}</legend>
        <ul>
          {PRESCRIBED_EXERCISE_IDS.map((exercise) => (
            <ExerciseCard
              key={exercise}
              exercise={exercise}
              taken={exercises[exercise]?.taken ?? false}
              legs={exercises[exercise]?.legs ?? null}
              affected={affected}
              role={by.role}
              onTake={(taken) => onChange(withTaken(draft, exercise, taken))}
              onChange={(legs) => onChange(withLegs(draft, exercise, legs))}
            />
          ))}
        </ul>
        {beyond.length > 0 ? <p>{prescribe.legs.beyond(beyond.length)}</p> : null}
      </fieldset>
      <SelfCheckFields checks={selfChecks} onChange={(changed) => onChange({ ...draft, selfChecks: changed })} />
      <DeciderFields by={by} onChange={(changed) => onChange({ ...draft, by: changed })} />
      <p className="soft">{items.length === 0 ? plan.none : plan.basis}</p>
      <div className="plan-save">
        <button type="submit" className="button" data-look="main" disabled={!ready}>
          {isTherapist ? prescribe.decides.save : plan.save}
        </button>
        {isTherapist ? (
          <button type="button" className="button" disabled={!ready} onClick={() => onSave('/plan/give')}>
            {prescribe.decides.saveAndGive}
          </button>
        ) : null}
      </div>
      <Link href="/take" className="button">
        {isOfPerson ? people.person.take : handOver.take.open}
      </Link>
    </form>
  );
}
