import { DOSE_FIELDS, type DoseField, type DoseLimits } from '../../dose/dose.ts';
import type { PrescribedExercise } from '../../dose/prescribed-exercise.ts';
import type { ProgressionRule, Threshold } from '../../dose/progression-rule.ts';
import { MOST_PRESCRIBED } from '../../record/prescription-shape.ts';
import { MOST_INTENSITY } from '../../symptoms/felt.ts';
import { useWords } from '../words/words-context.tsx';
import { CountField } from './count-field.tsx';

interface RuleFieldsProps {
  readonly line: PrescribedExercise;
  readonly onChange: (part: Pick<PrescribedExercise, 'progression'>) => void;
}

/** What each threshold may be: the same bounds as the stored plan has. */
const BOUNDS: Readonly<Record<Exclude<Threshold, 'doneShare'>, { readonly least: number; readonly most: number }>> = {
  clearRise: { least: 1, most: MOST_INTENSITY },
  settledWithin: { least: 0, most: MOST_INTENSITY },
  goodDays: { least: 1, most: MOST_PRESCRIBED.days },
  goodDaysAfterFlare: { least: 1, most: MOST_PRESCRIBED.days },
  freshDays: { least: 1, most: MOST_PRESCRIBED.days },
};
const WHOLE: readonly Exclude<Threshold, 'doneShare'>[] = [
  'clearRise',
  'settledWithin',
  'goodDays',
  'goodDaysAfterFlare',
  'freshDays',
];
const LIMITS: Readonly<Record<DoseField, { readonly least: number; readonly most: number }>> = {
  setsADay: { least: 1, most: MOST_PRESCRIBED.sets },
  repsASet: { least: 1, most: MOST_PRESCRIBED.reps },
  holdS: { least: 0, most: MOST_PRESCRIBED.holdS },
};

/** When the dose goes up or back, and between which limits. */
export function RuleFields({ line: { progression }, onChange }: RuleFieldsProps) {
  const { plan } = useWords();
  const { limits } = progression;
  const change = (part: Partial<ProgressionRule>) => onChange({ progression: { ...progression, ...part } });
  const changeLimit = (field: DoseField, part: Partial<DoseLimits[DoseField]>) =>
    change({ limits: { ...limits, [field]: { ...limits[field], ...part } } });
  return (
    <details className="line-editor-rule">
      <summary>{plan.rule}</summary>
      <div className="line-editor-numbers">
        {WHOLE.map((threshold) => (
          <CountField
            key={threshold}
            words={plan.thresholds[threshold]}
            value={progression[threshold]}
            {...BOUNDS[threshold]}
            onChange={(value) => change({ [threshold]: value })}
          />
        ))}
        <CountField
          words={plan.thresholds.doneShare}
          value={Math.round(100 * progression.doneShare)}
          least={0}
          most={100}
          step={5}
          onChange={(percent) => change({ doneShare: percent / 100 })}
        />
      </div>
      <h2>{plan.limits}</h2>
      <div className="line-editor-numbers">
        {DOSE_FIELDS.flatMap((field) =>
          (['least', 'most'] as const).map((end) => {
            const named = (text: string) => `${text}, ${plan[end]}`;
            const { label, fewer, more } = plan.fields[field];
            return (
              <CountField
                key={`${field} ${end}`}
                words={{ label: named(label), fewer: named(fewer), more: named(more) }}
                value={limits[field][end]}
                least={end === 'most' ? limits[field].least : LIMITS[field].least}
                most={end === 'least' ? limits[field].most : LIMITS[field].most}
                onChange={(value) => changeLimit(field, { [end]: value })}
              />
            );
          }),
        )}
      </div>
    </details>
  );
}
