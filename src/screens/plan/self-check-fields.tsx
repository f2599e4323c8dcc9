import type { Prescription } from '../../dose/prescription.ts';
import { MOST_PRESCRIBED } from '../../record/prescription-shape.ts';
import { SELF_CHECK_IDS } from '../../symptoms/self-check.ts';
import { useWords } from '../words/words-context.tsx';
import { CountField } from './count-field.tsx';

type SelfChecks = Prescription['selfChecks'];

interface SelfCheckFieldsProps {
  readonly checks: SelfChecks;
  readonly onChange: (checks: SelfChecks) => void;
}

/** Which checks of strength are repeated, and how often; always on both legs, since one is the measure of the other. */
export function SelfCheckFields({ checks: { checks, sides, everyDays }, onChange }: SelfCheckFieldsProps) {
  const { plan, check } = useWords();
  return (
    <fieldset className="plan-exercises plan-checks">
      <legend>{plan.checks}</legend>
      <ul>
        {SELF_CHECK_IDS.map((id) => (
          <li key={id} className="plan-item" data-chosen={checks.includes(id)}>
            <label className="plan-line">
              <input
                type="checkbox"
                checked={checks.includes(id)}
                onChange={(event) => {
                  const wanted = event.currentTarget.checked;
                  const chosen = SELF_CHECK_IDS.filter((each) => (each === id ? wanted : checks.includes(each)));
                  onChange({ checks: chosen, sides: sides.length > 0 ? sides : ['left', 'right'], everyDays });
                }}
              />
              <span>
                <strong>{check.names[id]}</strong>
                <span className="soft small">{check.how[id]}</span>
              </span>
            </label>
          </li>
        ))}
      </ul>
      {checks.length === 0 ? null : (
        <CountField
          words={plan.checksEvery}
          value={everyDays}
          least={1}
          most={MOST_PRESCRIBED.days}
          onChange={(days) => onChange({ checks, sides, everyDays: days })}
        />
      )}
    </fieldset>
  );
}
