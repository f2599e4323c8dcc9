import type { PrescribedExercise, Target } from '../../dose/prescribed-exercise.ts';
import { deg } from '../../units.ts';
import { OptionCards } from '../choose/option-cards.tsx';
import { useWords } from '../words/words-context.tsx';
import { CountField } from './count-field.tsx';

/** The range that is offered where one is wanted, degrees from rest. Chosen: small, to be set by who prescribes it. */
const FIRST_RANGE: Target = { kind: 'range', fromDeg: deg(10), toDeg: deg(20) };
const MOST_DEG = 150;

const KINDS: readonly Target['kind'][] = ['full', 'symptoms', 'range'];

interface TargetFieldProps {
  readonly line: PrescribedExercise;
  readonly onChange: (part: Pick<PrescribedExercise, 'target'>) => void;
}

/** How far to move. */
export function TargetField({ line: { id, target }, onChange }: TargetFieldProps) {
  const { plan } = useWords();
  return (
    <>
      <OptionCards
        legend={plan.target}
        name={`target-${id}`}
        options={KINDS.map((value) => ({ value, name: plan.targets[value] }))}
        chosen={target.kind}
        onChoose={(kind) => onChange({ target: kind === 'range' ? FIRST_RANGE : { kind } })}
      />
      {target.kind === 'range' ? (
        <div className="line-editor-numbers">
          {(['fromDeg', 'toDeg'] as const).map((end) => (
            <CountField
              key={end}
              words={plan.fields[end]}
              value={target[end]}
              least={1}
              most={MOST_DEG}
              onChange={(value) => onChange({ target: { ...target, [end]: deg(value) } })}
            />
          ))}
        </div>
      ) : null}
    </>
  );
}
