import { useEffect, useRef, useState } from 'react';
import { Page } from '../parts/page.tsx';
import { useServices } from '../services-context.tsx';
import { LanguageSwitch } from '../start/language-switch.tsx';
import { CallState } from './call-state.tsx';
import { Forgotten } from './forgotten.tsx';
import { useLockWords } from './use-lock-words.ts';
import './lock-screen.css';
import { PassphraseField } from './passphrase-field.tsx';
import { useLockCall } from './use-lock-call.ts';

/** The way in while the records are locked. */
export function UnlockScreen() {
  const lock = useLockWords();
  const services = useServices();
  const call = useLockCall();
  const [passphrase, setPassphrase] = useState('');
  const field = useRef<HTMLInputElement>(null);
  // After the page's own, which goes to its heading: there is this one thing to do.
  useEffect(() => field.current?.focus({ preventScroll: true }), []);
  const unlock = async () => {
    const opened = await call.start((onProgress) => services.lock.unlock(passphrase, onProgress));
    if (!opened) field.current?.select();
  };
  return (
    <Page className="unlock" title={lock.unlock.title} lead={lock.unlock.lead}>
      <div className="lock-parts">
        <form
          className="lock-form"
          onSubmit={(event) => {
            event.preventDefault();
            void unlock();
          }}
        >
          <PassphraseField label={lock.passphrase} value={passphrase} onChange={setPassphrase} kind="current" field={field} />
          <CallState call={call} />
          <button type="submit" className="button" data-look="main" disabled={call.busy || passphrase === ''}>
            {lock.unlock.do}
          </button>
        </form>
        <Forgotten />
      </div>
      <LanguageSwitch />
    </Page>
  );
}
