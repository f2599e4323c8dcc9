import { useState } from 'react';
import { Notice } from '../parts/notice.tsx';
import { useServices } from '../services-context.tsx';
import { CallState } from './call-state.tsx';
import { useLockCall } from './use-lock-call.ts';
import { useLockWords } from './use-lock-words.ts';

/** What a forgotten passphrase means, and the only way on from there, which asks for a typed word. */
export function Forgotten() {
  const { unlock, lost } = useLockWords();
  const services = useServices();
  const call = useLockCall();
  const [asked, setAsked] = useState(false);
  const [typed, setTyped] = useState('');
  if (!asked) {
    return (
      <button type="button" className="button" data-look="quiet" onClick={() => setAsked(true)}>
        {unlock.forgot}
      </button>
    );
  }
  const meant = typed.trim().toUpperCase() === unlock.word;
  return (
    <Notice icon="warning" look="caution" title={unlock.forgot}>
      <p>{lost}</p>
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
    </Notice>
  );
}
