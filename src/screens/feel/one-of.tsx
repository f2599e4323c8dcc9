import './feel-form.css';
import type { NotAnswered } from '../../symptoms/entry.ts';

interface OneOfProps<T extends string> {
  readonly name: string;
  readonly legend: string;
  readonly options: readonly { readonly value: T; readonly name: string }[];
  readonly chosen: T | NotAnswered;
  readonly onChoose: (value: T) => void;
}

/** One answer among a few, which may stay open. */
export function OneOf<T extends string>({ name, legend, options, chosen, onChoose }: OneOfProps<T>) {
  return (
    <fieldset className="feel-kinds">
      <legend>{legend}</legend>
      <div>
        {options.map((option) => (
          <label key={option.value} className="feel-tick">
            <input type="radio" name={name} checked={option.value === chosen} onChange={() => onChoose(option.value)} />
            {option.name}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
