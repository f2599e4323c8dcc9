import type { Dose, DoseField } from '../../dose/dose.ts';
import type { PrescribedExercise } from '../../dose/prescribed-exercise.ts';
import { useWords } from '../words/words-context.tsx';
import { CountField } from './count-field.tsx';
import './line-editor.css';
import { lineFault } from './plan-line.ts';
import { RuleFields } from './rule-fields.tsx';
import { TargetField } from './target-field.tsx';
import { TempoField } from './tempo-field.tsx';

interface LineEditorProps {
  readonly line: PrescribedExercise;
  /** Somebody has decided on it. */
  readonly onChange: (line: PrescribedExercise) => void;
}

/** Everything that a line of the plan can say, from what changes most to what changes least. */
export function LineEditor({ line, onChange }: LineEditorProps) {
  const { plan } = useWords();
  const change = (part: Partial<PrescribedExercise>) => onChange({ ...line, ...part, basis: 'therapist' });
  const changeDose = (part: Partial<Dose>) => change({ start: { ...line.start, ...part } });
  const { limits } = line.progression;
  const dose = (field: DoseField, step = 1) => (
    <CountField
      words={plan.fields[field]}
      value={line.start[field]}
      least={limits[field].least}
      most={limits[field].most}
      step={step}
      onChange={(value) => changeDose({ [field]: value })}
    />
  );
  const fault = lineFault(line);
  return (
    <details className="line-editor">
      <summary>{plan.change}</summary>
      <div className="line-editor-parts">
        <div className="line-editor-numbers">
          {dose('setsADay')}
          {dose('repsASet')}
          {limits.holdS.most > 0 ? dose('holdS') : null}
          <CountField
            words={plan.fields.daysAWeek}
            value={line.daysAWeek}
            least={1}
            most={7}
            onChange={(daysAWeek) => change({ daysAWeek })}
          />
          <CountField
            words={plan.fields.restS}
            value={line.restS}
            least={0}
            most={600}
            step={15}
            onChange={(restS) => change({ restS })}
          />
          <CountField
            words={plan.fields.symptomLimit}
            value={line.symptomLimit}
            least={0}
            most={10}
            onChange={(symptomLimit) => change({ symptomLimit })}
          />
        </div>
        <TempoField line={line} onChange={change} />
        <TargetField line={line} onChange={change} />
        <RuleFields line={line} onChange={change} />
        {fault ? (
          <p className="line-editor-fault" role="alert">
            {plan[fault]}
          </p>
        ) : null}
      </div>
    </details>
  );
}
