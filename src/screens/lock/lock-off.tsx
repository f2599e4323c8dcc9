import { Notice } from '../parts/notice.tsx';
import { useServices } from '../services-context.tsx';
import { NewPassphrase } from './new-passphrase.tsx';
import { useLockCall } from './use-lock-call.ts';
import { useLockWords } from './use-lock-words.ts';

/** What the lock does and does not do, and the way to turn it on. */
export function LockOff() {
  const lock = useLockWords();
  const services = useServices();
  const call = useLockCall();
  return (
    <>
      <Notice icon="warning" look="caution" title={lock.off.title}>
        <p>{lock.lost}</p>
      </Notice>
      <NewPassphrase
        label={lock.passphrase}
        button={lock.off.turnOn}
        call={call}
        main
        onGiven={(passphrase) => call.start((onProgress) => services.lock.turnOn(passphrase, onProgress))}
      />
      <section className="lock-readable">
        <h2>{lock.off.readableTitle}</h2>
        <p>{lock.off.readable}</p>
      </section>
    </>
  );
}
