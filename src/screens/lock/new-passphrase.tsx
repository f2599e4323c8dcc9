import { useState } from 'react';
import { LEAST_CHARACTERS } from '../../record/lock/passphrase.ts';
import { CallState } from './call-state.tsx';
import { PassphraseField } from './passphrase-field.tsx';
import type { LockCall } from './use-lock-call.ts';
import { useLockWords } from './use-lock-words.ts';

interface NewPassphraseProps {
  readonly label: string;
  readonly button: string;
  readonly call: LockCall;
  readonly main?: boolean;
  readonly onGiven: (passphrase: string) => Promise<boolean>;
}

/** A new passphrase, typed twice. */
export function NewPassphrase({ label, button, call, main = false, onGiven }: NewPassphraseProps) {
  const lock = useLockWords();
  const [first, setFirst] = useState('');
  const [second, setSecond] = useState('');
  const [differs, setDiffers] = useState(false);
  const give = async () => {
    setDiffers(first !== second);
    if (first === second && (await onGiven(first))) {
      setFirst('');
      setSecond('');
    }
  };
  return (
    <form
      className="lock-form"
      onSubmit={(event) => {
        event.preventDefault();
        void give();
      }}
    >
      <PassphraseField label={label} value={first} onChange={setFirst} kind="new" />
      <p className="soft">{lock.hint(LEAST_CHARACTERS)}</p>
      <PassphraseField label={lock.again} value={second} onChange={setSecond} kind="new" />
      {differs ? (
        <p className="lock-differs" role="alert">
          {lock.differs}
        </p>
      ) : null}
      <CallState call={call} />
      <button
        type="submit"
        className="button"
        data-look={main ? 'main' : undefined}
        disabled={call.busy || first === '' || second === ''}
      >
        {button}
      </button>
    </form>
  );
}
