import type { NotAnswered } from '../../symptoms/entry.ts';
import { MOST_INTENSITY } from '../../symptoms/felt.ts';
import { useWords } from '../words/words-context.tsx';
import './strength-scale.css';

interface StrengthScaleProps {
  readonly name: string;
  readonly legend: string;
  readonly value: number | NotAnswered;
  readonly onChange: (value: number) => void;
}

const STEPS = Array.from({ length: MOST_INTENSITY + 1 }, (_, i) => i);

/** The numeric rating scale, 0 to 10, as eleven large buttons. */
export function StrengthScale({ name, legend, value, onChange }: StrengthScaleProps) {
  const { feel } = useWords();
  return (
    <fieldset className="strength">
      <legend>{legend}</legend>
      <div className="strength-steps">
        {STEPS.map((step) => (
          <label key={step}>
            <input type="radio" name={name} checked={value === step} onChange={() => onChange(step)} />
            <span className="numbers">{step}</span>
          </label>
        ))}
      </div>
      <p className="strength-ends soft small">
        <span>{feel.none}</span>
        <span>{feel.worst}</span>
      </p>
    </fieldset>
  );
}
