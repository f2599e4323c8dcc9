import type { ReactNode } from 'react';
import './option-cards.css';

export interface Option<T extends string> {
  readonly value: T;
  readonly name: string;
  readonly about?: string;
  readonly drawing?: ReactNode;
}

interface OptionCardsProps<T extends string> {
  readonly legend: string;
  readonly hint?: string;
  /** Names the group of radio buttons. */
  readonly name: string;
  readonly options: readonly Option<T>[];
  readonly chosen: T;
  readonly onChoose: (value: T) => void;
}

/** One choice among a few, each a large card; radio buttons for the keyboard and for screen readers. */
export function OptionCards<T extends string>({ legend, hint, name, options, chosen, onChoose }: OptionCardsProps<T>) {
  const hintId = `${name}-hint`;
  return (
    <fieldset className="options" aria-describedby={hint === undefined ? undefined : hintId}>
      <legend>{legend}</legend>
      {hint === undefined ? null : (
        <p id={hintId} className="options-hint soft">
          {hint}
        </p>
      )}
      <div className="options-cards" data-count={options.length}>
        {options.map((option) => (
          <label className="option" key={option.value}>
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={option.value === chosen}
              onChange={() => onChoose(option.value)}
            />
            {option.drawing}
            <span className="option-words">
              <span className="option-name">{option.name}</span>
              {option.about === undefined ? null : <span className="option-about soft small">{option.about}</span>}
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
