import { SELF } from '../../record/person.ts';
import { Notice } from '../parts/notice.tsx';
import type { Problem } from '../services.ts';
import type { RecordWords } from '../words/record-words.ts';
import { useWords } from '../words/words-context.tsx';
import type { RecordFault } from './record-services.ts';
import { useRecordWords } from './use-record-words.ts';

type Told = keyof RecordWords['bring']['faults'];

const isTold = (kind: string, faults: RecordWords['bring']['faults']): kind is Told => Object.hasOwn(faults, kind);

interface FaultNoticeProps {
  readonly error: Problem | RecordFault;
  /** What somebody of the list is called. */
  readonly nameOf: (person: string) => string;
}

/** Why a record was not taken in, and what to do. Nothing was kept of it. */
export function FaultNotice({ error, nameOf }: FaultNoticeProps) {
  const { bring } = useRecordWords();
  const { problems } = useWords();
  if (error.kind === 'record-sealed') return null;
  const said =
    error.kind === 'record-elsewhere' && 'person' in error
      ? bring.elsewhere(error.person === SELF ? bring.elsewhereOwn : nameOf(error.person), error.count)
      : isTold(error.kind, bring.faults)
        ? bring.faults[error.kind]
        : problems[error.kind as Problem['kind']]('');
  return (
    <Notice icon="warning" look="fault" title={said.title} alert>
      <p>{said.todo}</p>
      {error.kind === 'record-wrong' ? <p className="soft small">{bring.where(`${error.where}: ${error.what}`)}</p> : null}
    </Notice>
  );
}
