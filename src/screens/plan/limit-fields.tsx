import { DOSE_FIELDS, type DoseField, type DoseLimits } from '../../dose/dose.ts';
import { useWords } from '../words/words-context.tsx';
import { CountField } from './count-field.tsx';
import { LIMIT_BOUNDS } from './rule-bounds.ts';

interface LimitFieldsProps {
  readonly limits: DoseLimits;
  readonly onChange: (limits: DoseLimits) => void;
}

/** The least and the most of the dose, which no rule leaves. */
export function LimitFields({ limits, onChange }: LimitFieldsProps) {
  const { plan } = useWords();
  const changeLimit = (field: DoseField, part: Partial<DoseLimits[DoseField]>) =>
    onChange({ ...limits, [field]: { ...limits[field], ...part } });
  return (
    <>
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
                least={end === 'most' ? limits[field].least : LIMIT_BOUNDS[field].least}
                most={end === 'least' ? limits[field].most : LIMIT_BOUNDS[field].most}
                onChange={(value) => changeLimit(field, { [end]: value })}
              />
            );
          }),
        )}
      </div>
    </>
  );
}
