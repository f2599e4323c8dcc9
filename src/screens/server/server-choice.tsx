import { useId } from 'react';

interface ServerChoiceProps {
  readonly name: string;
  readonly about: string;
  readonly chosen: boolean;
  readonly disabled: boolean;
  readonly onChoose: (chosen: boolean) => void;
}

/** One thing to choose, with what it means. */
export function ServerChoice({ name, about, chosen, disabled, onChoose }: ServerChoiceProps) {
  const id = useId();
  return (
    <div className="server-choice">
      <label>
        <input
          type="checkbox"
          checked={chosen}
          disabled={disabled}
          aria-describedby={id}
          onChange={({ target }) => onChoose(target.checked)}
        />
        {name}
      </label>
      <p id={id} className="soft small">
        {about}
      </p>
    </div>
  );
}
