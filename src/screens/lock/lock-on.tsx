import { useState } from 'react';
import { Icon } from '../parts/icon.tsx';
import { Notice } from '../parts/notice.tsx';
import { useServices } from '../services-context.tsx';
import { CallState } from './call-state.tsx';
import { NewPassphrase } from './new-passphrase.tsx';
import { PassphraseField } from './passphrase-field.tsx';
import { useLockCall } from './use-lock-call.ts';
import { useLockWords } from './use-lock-words.ts';

function ChangePassphrase() {
  const lock = useLockWords();
  const services = useServices();
  const call = useLockCall();
  const [old, setOld] = useState('');
  const [changed, setChanged] = useState(false);
  const change = async (next: string) => {
    setChanged(false);
    const done = await call.start(() => services.lock.change(old, next));
    setChanged(done);
    if (done) setOld('');
    return done;
  };
  return (
    <details className="lock-more">
      <summary>{lock.on.change}</summary>
      <div className="lock-form">
        <PassphraseField label={lock.old} value={old} onChange={setOld} kind="current" />
        <NewPassphrase label={lock.next} button={lock.on.change} call={call} onGiven={change} />
        <p role="status">{changed ? lock.on.changed : null}</p>
      </div>
    </details>
  );
}

function TurnOff() {
  const lock = useLockWords();
  const services = useServices();
  const call = useLockCall();
  const [passphrase, setPassphrase] = useState('');
  return (
    <details className="lock-more">
      <summary>{lock.on.turnOff}</summary>
      <form
        className="lock-form"
        onSubmit={(event) => {
          event.preventDefault();
          void call.start((onProgress) => services.lock.turnOff(passphrase, onProgress));
        }}
      >
        <p>{lock.on.turnOffAbout}</p>
        <PassphraseField label={lock.passphrase} value={passphrase} onChange={setPassphrase} kind="current" />
        <CallState call={call} />
        <button type="submit" className="button" disabled={call.busy || passphrase === ''}>
          {lock.on.turnOff}
        </button>
      </form>
    </details>
  );
}

/** @param part turning it on or off broke off */
export function LockOn({ part }: { readonly part: boolean }) {
  const lock = useLockWords();
  const services = useServices();
  const call = useLockCall();
  return (
    <>
      {part ? (
        <Notice icon="warning" look="caution" title={lock.on.part}>
          <CallState call={call} />
          <p>
            <button
              type="button"
              className="button"
              disabled={call.busy}
              onClick={() => void call.start((onProgress) => services.lock.finish(onProgress))}
            >
              {lock.on.finish}
            </button>
          </p>
        </Notice>
      ) : (
        <Notice icon="lock" look="calm" title={lock.on.title}>
          <p>{lock.on.about}</p>
        </Notice>
      )}
      <button type="button" className="button lock-now" data-look="main" onClick={services.lock.lockNow}>
        <Icon name="lock" />
        {lock.on.now}
      </button>
      <ChangePassphrase />
      <TurnOff />
    </>
  );
}
