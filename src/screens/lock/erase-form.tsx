import { useState } from 'react';
import { useServices } from '../services-context.tsx';
import { CallState } from './call-state.tsx';
import './passphrase-field.css';
import { useLockCall } from './use-lock-call.ts';
import { useLockWords } from './use-lock-words.ts';

/** Deletes everything that is kept on this machine, once a word is typed. */
export function EraseForm() {
  const { unlock } = useLockWords();
  const services = useServices();
  const call = useLockCall();
  const [typed, setTyped] = useState('');
  const meant = typed.trim().toUpperCase() === unlock.word;
  return (
    <form
      className="erase lock-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (meant) void call.start(() => services.lock.erase());
      }}
    >
      <label>
        {unlock.confirm(unlock.word)}
        <input
          type="text"
          value={typed}
          autoComplete="off"
          spellCheck={false}
          onChange={(event) => setTyped(event.target.value)}
        />
      </label>
      <p>{unlock.erased}</p>
      <CallState call={call} />
      <button type="submit" className="button" data-look="stop" disabled={call.busy || !meant}>
        {unlock.erase}
      </button>
    </form>
  );
}
