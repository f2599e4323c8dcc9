import { useEffect, useRef, useState } from 'react';
import { Link } from 'wouter';
import type { RecordFile } from '../../record/file/read-record.ts';
import type { Brought, Into } from '../../record/file/record-store.ts';
import { newId } from '../../record/new-id.ts';
import { type Person, type PersonId, SELF } from '../../record/person.ts';
import { fail, type Result } from '../../result.ts';
import { Notice } from '../parts/notice.tsx';
import { ShareDone } from '../parts/share-done.tsx';
import type { Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { ForWhom, type Whom } from './for-whom.tsx';
import { FoundRecord } from './found-record.tsx';
import { FaultNotice } from './record-fault.tsx';
import type { RecordFault } from './record-services.ts';
import { useRecordWords } from './use-record-words.ts';

type Answer = Result<Brought, Problem | RecordFault>;

interface OfferedRecordProps {
  readonly record: RecordFile;
  /** For whom; null: it is chosen here. */
  readonly fixed: PersonId | null;
  readonly people: readonly Person[];
  /** For whom a record of this person was taken in before. */
  readonly owner: PersonId | null;
  readonly onAgain: () => void;
}

/** A record that was read well: what it holds, for whom, and the choice to take it in. Nothing is written before that. */
export function OfferedRecord({ record, fixed, people, owner, onAgain }: OfferedRecordProps) {
  const { bring } = useRecordWords();
  const services = useServices();
  const known = people.find(({ id }) => id === owner) ?? null;
  const [whom, setWhom] = useState<Whom>(() => {
    const id = fixed ?? known?.id ?? null;
    return id === null ? { kind: 'new', name: record.manifest.person.name ?? '' } : { kind: 'here', id };
  });
  const [missing, setMissing] = useState(false);
  const [looked, setLooked] = useState<Answer | null>(null);
  const [taken, setTaken] = useState<{ readonly answer: Answer; readonly into: PersonId } | null>(null);
  const [busy, setBusy] = useState(false);
  const [share, setShare] = useState(0);
  // A second press before the screen knows of the first.
  const going = useRef(false);
  const id = whom.kind === 'here' ? whom.id : null;
  useEffect(() => {
    let wanted = true;
    setLooked(null);
    const look = async () => {
      const answer = await (await services.records()).looked(id, record);
      if (wanted) setLooked(answer);
    };
    void look();
    return () => {
      wanted = false;
    };
  }, [services, id, record]);

  const intoOf = (): Into | null => {
    if (whom.kind === 'here') return { kind: 'here', person: whom.id };
    const name = whom.name.trim();
    if (name === '') return null;
    const now = new Date().toISOString();
    const { affectedSide } = record.manifest.person;
    const person = {
      id: newId(),
      schema: 1,
      name,
      affectedSide,
      notes: '',
      addedAt: now,
      changedAt: now,
      seenUntil: null,
    } as const;
    return { kind: 'new', person };
  };
  const take = async () => {
    const into = intoOf();
    setMissing(into === null);
    if (!into || going.current) return;
    going.current = true;
    setBusy(true);
    setShare(0);
    const answer = await (await services.records())
      .taken(into, record, setShare)
      .catch(() => fail({ kind: 'unexpected' } as const));
    going.current = false;
    setBusy(false);
    setTaken({ answer, into: into.kind === 'here' ? into.person : into.person.id });
  };
  const nameOf = (person: PersonId) => people.find((each) => each.id === person)?.name ?? person;

  if (taken?.answer.ok) return <TakenRecord record={record} brought={taken.answer.value} into={taken.into} onAgain={onAgain} />;
  const error = taken && !taken.answer.ok ? taken.answer.error : looked && !looked.ok ? looked.error : null;
  return (
    <>
      <FoundRecord record={record} brought={looked?.ok ? looked.value : null} />
      {known && known.id !== fixed ? <p>{bring.known(known.name)}</p> : null}
      {fixed === null ? (
        <ForWhom
          people={people}
          whom={whom}
          missing={missing}
          onChange={(next) => {
            setWhom(next);
            setMissing(false);
            setTaken(null);
          }}
        />
      ) : null}
      {error ? <FaultNotice error={error} nameOf={nameOf} /> : null}
      {busy ? <ShareDone share={share} name={bring.taking} /> : null}
      <p className="record-answer">
        <button type="button" className="button" data-look="main" disabled={busy || !looked?.ok} onClick={() => void take()}>
          {busy ? bring.taking : bring.take}
        </button>
        <button type="button" className="button" disabled={busy} onClick={onAgain}>
          {bring.notNow}
        </button>
      </p>
    </>
  );
}

interface TakenRecordProps {
  readonly record: RecordFile;
  readonly brought: Brought;
  readonly into: PersonId;
  readonly onAgain: () => void;
}

/** It is on the disk: what came of it, and where to go on. */
function TakenRecord({ record, brought, into, onAgain }: TakenRecordProps) {
  const { bring } = useRecordWords();
  return (
    <>
      <div role="status">
        <Notice icon="check" look="calm" title={bring.done}>
          {null}
        </Notice>
      </div>
      <FoundRecord record={record} brought={brought} />
      <p className="record-answer">
        {into === SELF ? (
          <Link href="/today" className="button" data-look="main">
            {bring.toToday}
          </Link>
        ) : (
          <>
            <Link href={`~/person/${into}/review`} className="button" data-look="main">
              {bring.toReview}
            </Link>
            <Link href={`~/person/${into}`} className="button">
              {bring.toPerson}
            </Link>
          </>
        )}
        <button type="button" className="button" onClick={onAgain}>
          {bring.another}
        </button>
      </p>
    </>
  );
}
