import { type FormEvent, useState } from 'react';
import { Link } from 'wouter';
import type { RecordFile } from '../../record/file/read-record.ts';
import { type Person, type PersonId, SELF } from '../../record/person.ts';
import { PassphraseField } from '../lock/passphrase-field.tsx';
import { useLockWords } from '../lock/use-lock-words.ts';
import { FileField } from '../parts/file-field.tsx';
import { Icon } from '../parts/icon.tsx';
import { Notice } from '../parts/notice.tsx';
import { Page } from '../parts/page.tsx';
import { ShareDone } from '../parts/share-done.tsx';
import { useBack, usePerson } from '../people/person-context.tsx';
import type { Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import '../lock/lock-screen.css';
import { OfferedRecord } from './offered-record.tsx';
import { FaultNotice } from './record-fault.tsx';
import './record-screens.css';
import type { RecordFault } from './record-services.ts';
import { useRecordWords } from './use-record-words.ts';

/** How far the opening of a file has come. */
type Opening =
  | { readonly kind: 'waiting'; readonly error: Problem | RecordFault | null }
  | { readonly kind: 'checking'; readonly share: number }
  | { readonly kind: 'sealed'; readonly file: File; readonly error: RecordFault | null }
  | { readonly kind: 'plan'; readonly code: string }
  | { readonly kind: 'record'; readonly record: RecordFile; readonly owner: PersonId | null; readonly people: readonly Person[] };

/** Asks for the passphrase of a sealed file. */
function Unseal({ error, onGiven }: { readonly error: RecordFault | null; readonly onGiven: (passphrase: string) => void }) {
  const { bring } = useRecordWords();
  const lock = useLockWords();
  const [passphrase, setPassphrase] = useState('');
  return (
    <form
      className="lock-form"
      onSubmit={(event: FormEvent) => {
        event.preventDefault();
        onGiven(passphrase);
      }}
    >
      <Notice icon="lock" look="calm" title={bring.sealedTitle}>
        <p>{bring.sealedHint}</p>
      </Notice>
      {error ? <FaultNotice error={error} nameOf={(person) => person} /> : null}
      <PassphraseField label={lock.passphrase} value={passphrase} onChange={setPassphrase} kind="current" />
      <button type="submit" className="button" data-look="main" disabled={passphrase === ''}>
        {bring.unseal}
      </button>
    </form>
  );
}

/** A record from another machine: shown before anything of it is kept. @param forAnybody of a therapist's list, chosen here */
export function BringScreen({ forAnybody = false }: { readonly forAnybody?: boolean }) {
  const inUse = usePerson();
  const back = useBack(forAnybody ? '/people' : '/report');
  const whose = forAnybody ? 'anybody' : inUse ? 'person' : 'self';
  const { bring } = useRecordWords();
  const services = useServices();
  const [opening, setOpening] = useState<Opening>({ kind: 'waiting', error: null });

  const read = async (file: File, passphrase: string | null) => {
    const checking = (share: number) => setOpening({ kind: 'checking', share });
    checking(0);
    const records = await services.records();
    const opened = await records.open(file, passphrase, checking);
    if (!opened.ok) {
      const { error } = opened;
      const asks = error.kind === 'record-sealed' || error.kind === 'record-passphrase';
      const told = error.kind === 'record-sealed' ? null : error;
      return setOpening(asks ? { kind: 'sealed', file, error: told } : { kind: 'waiting', error });
    }
    if (opened.value.kind === 'plan') return setOpening(opened.value);
    const { record } = opened.value;
    const [owner, listed] = await Promise.all([records.ownerOf(record), services.people.list()]);
    if (!owner.ok) return setOpening({ kind: 'waiting', error: owner.error });
    if (!listed.ok) return setOpening({ kind: 'waiting', error: listed.error });
    setOpening({ kind: 'record', record, owner: owner.value, people: listed.value.people.map(({ person }) => person) });
  };
  const again = () => setOpening({ kind: 'waiting', error: null });

  return (
    <Page className="bring-record" title={bring.title[whose]} lead={bring.lead[whose]} back={back}>
      <div className="record-parts">
        {opening.kind === 'waiting' ? (
          <>
            {opening.error ? <FaultNotice error={opening.error} nameOf={(person) => person} /> : null}
            <FileField
              className="record-drop"
              accept=".zip,.json,application/zip,application/json"
              onFile={(file) => void read(file, null)}
            >
              <Icon name="file" size={36} />
              <strong>{bring.pick}</strong>
              <span className="soft">{bring.pickHint}</span>
            </FileField>
          </>
        ) : null}
        {opening.kind === 'checking' ? (
          <>
            <p role="status">{bring.checking}</p>
            <ShareDone share={opening.share} name={bring.checking} />
          </>
        ) : null}
        {opening.kind === 'sealed' ? (
          <Unseal error={opening.error} onGiven={(passphrase) => void read(opening.file, passphrase)} />
        ) : null}
        {opening.kind === 'plan' ? (
          <Notice icon="file" look="caution" title={bring.plan.title} alert>
            <p>{bring.plan.todo}</p>
            <p className="record-answer">
              <Link href={`/take/${opening.code}`} className="button">
                {bring.openPlan}
              </Link>
              <button type="button" className="button" onClick={again}>
                {bring.another}
              </button>
            </p>
          </Notice>
        ) : null}
        {opening.kind === 'record' ? (
          <OfferedRecord
            record={opening.record}
            owner={opening.owner}
            people={opening.people}
            fixed={forAnybody ? null : (inUse?.person.id ?? SELF)}
            onAgain={again}
          />
        ) : null}
      </div>
    </Page>
  );
}
