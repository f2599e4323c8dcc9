import type { Prescription } from '../../dose/prescription.ts';
import { OptionCards } from '../choose/option-cards.tsx';
import { TherapistName } from '../parts/therapist-name.tsx';
import { usePerson } from '../people/person-context.tsx';
import { useWords } from '../words/words-context.tsx';

interface DeciderFieldsProps {
  readonly by: Prescription['by'];
  readonly onChange: (by: Prescription['by']) => void;
}

/** Who decides on the plan. A name that was typed in stays while it is only the person's own. */
export function DeciderFields({ by, onChange }: DeciderFieldsProps) {
  const { prescribe, handOver } = useWords();
  // In a person's record their therapist decides.
  const isAsked = usePerson() === null;
  return (
    <div className="plan-decides">
      {isAsked ? (
        <OptionCards
          legend={prescribe.decides.title}
          name="plan-decides"
          options={(['patient', 'therapist'] as const).map((value) => ({ value, name: prescribe.decides[value] }))}
          chosen={by.role}
          onChoose={(role) => onChange({ ...by, role })}
        />
      ) : null}
      {by.role === 'therapist' ? (
        <TherapistName label={handOver.give.name} value={by.name} onChange={(name) => onChange({ ...by, name })} />
      ) : null}
    </div>
  );
}
