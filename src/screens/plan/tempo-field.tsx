import type { PrescribedExercise } from '../../dose/prescribed-exercise.ts';
import { OptionCards } from '../choose/option-cards.tsx';
import { useWords } from '../words/words-context.tsx';
import { CountField } from './count-field.tsx';

/** Where a beat begins that nobody prescribed, seconds. Chosen. */
const FIRST_TEMPO_S = 4;

interface TempoFieldProps {
  readonly line: PrescribedExercise;
  readonly onChange: (part: Pick<PrescribedExercise, 'tempoS'>) => void;
}

/** At one's own pace, or with a beat of so many seconds. */
export function TempoField({ line: { id, tempoS }, onChange }: TempoFieldProps) {
  const { plan } = useWords();
  return (
    <>
      <OptionCards
        legend={plan.tempo}
        name={`tempo-${id}`}
        options={[
          { value: 'own', name: plan.ownPace },
          { value: 'beat', name: plan.paced },
        ]}
        chosen={tempoS === null ? 'own' : 'beat'}
        onChoose={(value) => onChange({ tempoS: value === 'own' ? null : FIRST_TEMPO_S })}
      />
      {tempoS === null ? null : (
        <CountField
          words={plan.fields.tempoS}
          value={tempoS}
          least={1}
          most={30}
          onChange={(seconds) => onChange({ tempoS: seconds })}
        />
      )}
    </>
  );
}
