import { type RefObject, useId, useState } from 'react';
import { Icon } from '../parts/icon.tsx';
import { useLockWords } from './use-lock-words.ts';
import './passphrase-field.css';

interface PassphraseFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** Tells password managers which of the two it is. */
  readonly kind: 'current' | 'new';
  readonly field?: RefObject<HTMLInputElement | null>;
}

/** A passphrase, hidden unless its button says otherwise. */
export function PassphraseField({ label, value, onChange, kind, field }: PassphraseFieldProps) {
  const lock = useLockWords();
  const [shown, setShown] = useState(false);
  const id = useId();
  return (
    <div className="passphrase">
      <label htmlFor={id}>{label}</label>
      <div className="passphrase-row">
        <input
          ref={field}
          id={id}
          type={shown ? 'text' : 'password'}
          value={value}
          autoComplete={`${kind}-password`}
          autoCapitalize="none"
          spellCheck={false}
          onChange={(event) => onChange(event.target.value)}
        />
        <button type="button" className="button" aria-pressed={shown} onClick={() => setShown(!shown)}>
          <Icon name="hidden" />
          {shown ? lock.hide : lock.show}
        </button>
      </div>
    </div>
  );
}
