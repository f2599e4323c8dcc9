import { useStore } from 'zustand';
import { Page } from '../parts/page.tsx';
import { useServices } from '../services-context.tsx';
import { LockOff } from './lock-off.tsx';
import { LockOn } from './lock-on.tsx';
import { useLockWords } from './use-lock-words.ts';
import './lock-screen.css';

/** Where the passphrase lock is turned on, changed and turned off. */
export function LockScreen() {
  const lock = useLockWords();
  const state = useStore(useServices().lock.state);
  return (
    <Page className="lock" title={lock.title} lead={lock.lead} back="/">
      <div className="lock-parts">{state === 'off' ? <LockOff /> : <LockOn part={state === 'part'} />}</div>
    </Page>
  );
}
