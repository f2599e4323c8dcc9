import { DOSE_FIELDS, type DoseField } from '../../dose/dose.ts';
import type { PrescribedExercise } from '../../dose/prescribed-exercise.ts';
import { SeenByChoice } from '../stickers/seen-by-choice.tsx';
import { useWords } from '../words/words-context.tsx';
import { CountField } from './count-field.tsx';
import './line-editor.css';
import { lineFault } from './line-fault.ts';
import { LIMIT_BOUNDS } from './rule-bounds.ts';
import { RuleFields } from './rule-fields.tsx';
import { TargetField } from './target-field.tsx';
import { TempoField } from './tempo-field.tsx';

interface LineEditorProps {
  readonly line: PrescribedExercise;
  /** Somebody has decided on it. */
  readonly onChange: (part: Partial<PrescribedExercise>) => void;
}

/** What one line says, for one leg or for both: what changes most is open, the rest folds. */
export function LineEditor({ line, onChange }: LineEditorProps) {
  const { plan, prescribe } = useWords();
  const { start, progression } = line;
  // Whoever prescribes more than the limit, or less, moves the limit with it.
  const changeDose = (field: DoseField, value: number) => {
    const { least, most } = progression.limits[field];
    const limits = { ...progression.limits, [field]: { least: Math.min(least, value), most: Math.max(most, value) } };
    onChange({ start: { ...start, [field]: value }, progression: { ...progression, limits } });
  };
  const dose = (field: DoseField) => (
    <CountField
      key={field}
      words={plan.fields[field]}
      value={start[field]}
      {...LIMIT_BOUNDS[field]}
      onChange={(value) => changeDose(field, value)}
    />
  );
  const fault = lineFault(line);
  return (
    <div className="line-editor-parts">
      <div className="line-editor-numbers">
        {DOSE_FIELDS.map(dose)}
        <CountField
          words={plan.fields.symptomLimit}
          value={line.symptomLimit}
          least={0}
          most={10}
          onChange={(symptomLimit) => onChange({ symptomLimit })}
        />
      </div>
      <TargetField line={line} onChange={onChange} />
      {fault ? (
        <p className="line-editor-fault" role="alert">
          {plan[fault]}
        </p>
      ) : null}
      <details className="line-editor-fold">
        <summary>{prescribe.more}</summary>
        <div className="line-editor-numbers">
          <CountField
            words={plan.fields.daysAWeek}
            value={line.daysAWeek}
            least={1}
            most={7}
            onChange={(daysAWeek) => onChange({ daysAWeek })}
          />
          <CountField
            words={plan.fields.restS}
            value={line.restS}
            least={0}
            most={600}
            step={15}
            onChange={(restS) => onChange({ restS })}
          />
        </div>
        <TempoField line={line} onChange={onChange} />
        <SeenByChoice
          exercise={line.exercise}
          name={`seen-by-${line.id}`}
          chosen={line.seenBy ?? 'pose'}
          onChoose={(seenBy) => onChange({ seenBy })}
        />
      </details>
      <RuleFields rule={progression} onChange={(rule) => onChange({ progression: rule })} />
    </div>
  );
}
