import { useState } from 'react';
import { Notice } from '../parts/notice.tsx';
import { EraseForm } from './erase-form.tsx';
import { useLockWords } from './use-lock-words.ts';

/** What a forgotten passphrase means, and the only way on from there, which asks for a typed word. */
export function Forgotten() {
  const { unlock, lost } = useLockWords();
  const [asked, setAsked] = useState(false);
  if (!asked) {
    return (
      <button type="button" className="button" data-look="quiet" onClick={() => setAsked(true)}>
        {unlock.forgot}
      </button>
    );
  }
  return (
    <Notice icon="warning" look="caution" title={unlock.forgot}>
      <p>{lost}</p>
      <EraseForm />
    </Notice>
  );
}
