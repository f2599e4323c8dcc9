import { ALWAYS_SAID, CHOSEN_CAUTIONS } from '../../dose/cautions.ts';
import type { CautionId } from '../../dose/prescribed-exercise.ts';
import { Icon } from '../parts/icon.tsx';
import { useWords } from '../words/words-context.tsx';
import './caution-fields.css';

interface CautionFieldsProps {
  /** Said before the sets of the exercise, with any leg. */
  readonly chosen: readonly CautionId[];
  readonly onChange: (id: CautionId, wanted: boolean) => void;
}

/** What is said before each set, on the screen and on paper. When to stop stands there without a choice. */
export function CautionFields({ chosen, onChange }: CautionFieldsProps) {
  const { day, prescribe } = useWords();
  const { caution } = day.go;
  const count = 1 + CHOSEN_CAUTIONS.filter((id) => chosen.includes(id)).length;
  return (
    <details className="line-editor-fold plan-cautions">
      <summary>{prescribe.cautions.title(count)}</summary>
      <ul>
        <li>
          <Icon name="check" size={24} />
          <span>
            {caution[ALWAYS_SAID]} <span className="soft">{prescribe.cautions.stays}</span>
          </span>
        </li>
        {CHOSEN_CAUTIONS.map((id) => (
          <li key={id}>
            <label>
              <input
                type="checkbox"
                checked={chosen.includes(id)}
                onChange={(event) => onChange(id, event.currentTarget.checked)}
              />
              {caution[id]}
            </label>
          </li>
        ))}
      </ul>
    </details>
  );
}
