import { useState } from 'react';
import { useServerWords } from '../words/server-catalogues.ts';
import { ServerChoice } from './server-choice.tsx';

interface SignInFormProps {
  /** Whether staying signed in is offered. */
  readonly mayKeep: boolean;
  readonly busy: boolean;
  readonly onGo: (keep: boolean) => void;
}

/** The way to the clinic's own sign-in. */
export function SignInForm({ mayKeep, busy, onGo }: SignInFormProps) {
  const { signIn, working } = useServerWords();
  const [keep, setKeep] = useState(false);
  return (
    <>
      <p>{signIn.about}</p>
      {mayKeep ? (
        <ServerChoice name={signIn.keep} about={signIn.keepAbout} chosen={keep} disabled={busy} onChoose={setKeep} />
      ) : null}
      <button type="button" className="button" data-look="main" disabled={busy} onClick={() => onGo(keep)}>
        {busy ? working : signIn.go}
      </button>
    </>
  );
}
