import { useState } from 'react';
import { Link } from 'wouter';
import type { GivenPlan } from '../../dose/given-plan.ts';
import { PLAN_LIMITS, type PlanError } from '../../record/plan-error.ts';
import { decodePlan, TAKE_ADDRESS } from '../../record/plan-transfer.ts';
import { fail, type Result } from '../../result.ts';
import { Page } from '../parts/page.tsx';
import { usePerson } from '../people/person-context.tsx';
import { useRecordWords } from '../record/use-record-words.ts';
import { useWords } from '../words/words-context.tsx';
import './give-screen.css';
import { OfferedPlan } from './offered-plan.tsx';
import { PlanFault } from './plan-fault.tsx';
import './take-screen.css';
import { useListed, WhosePlan } from './whose-plan.tsx';

type Read = Result<GivenPlan, PlanError | { readonly kind: 'file-unreadable' }>;

/** A character of UTF-8 takes up to four bytes: a file of more is not even read. */
const MOST_BYTES = 4 * PLAN_LIMITS.fileCharacters;

async function readFile(file: File): Promise<Read> {
  const { fileCharacters: limit } = PLAN_LIMITS;
  if (file.size > MOST_BYTES) return fail({ kind: 'plan-too-large', what: 'fileCharacters', found: file.size, limit });
  try {
    return decodePlan(await file.text());
  } catch {
    return fail({ kind: 'file-unreadable' });
  }
}

/** The two ways in: a file, or a link that is pasted. */
function Openers({ onRead }: { readonly onRead: (read: Read) => void }) {
  const { take } = useWords().handOver;
  const [pasted, setPasted] = useState('');
  return (
    <>
      <label className="button file-picker" data-look="main">
        <input
          type="file"
          accept=".json,application/json"
          onChange={(event) => {
            const input = event.currentTarget;
            const file = input.files?.[0];
            if (file) void readFile(file).then(onRead);
            // The same file may be chosen again after it was put right.
            input.value = '';
          }}
        />
        {take.pick}
      </label>
      <form
        className="take-paste"
        onSubmit={(event) => {
          event.preventDefault();
          onRead(decodePlan(pasted));
        }}
      >
        <label>
          {take.paste}
          <input type="text" value={pasted} autoComplete="off" spellCheck={false} onChange={(e) => setPasted(e.target.value)} />
        </label>
        <p className="soft small">{take.pasteHint}</p>
        <button type="submit" className="button" disabled={pasted.trim() === ''}>
          {take.read}
        </button>
      </form>
    </>
  );
}

/** A plan from somewhere else: shown whole before it is taken on. @param code of a link; null: nothing was opened yet */
export function TakeScreen({ code }: { readonly code: string | null }) {
  const { take } = useWords().handOver;
  const { bring } = useRecordWords();
  const inUse = usePerson();
  const [read, setRead] = useState<Read | null>(() => (code === null ? null : decodePlan(`${TAKE_ADDRESS}${code}`)));
  const found = read?.ok ? read.value : null;
  const listed = useListed();
  return (
    <Page className="take" title={take.title} lead={found ? take.found : take.lead} back="/today">
      <div className="take-parts">
        {read && !read.ok ? <PlanFault error={read.error} /> : null}
        {found && code !== null && !inUse && listed.length > 0 ? <WhosePlan people={listed} code={code} /> : null}
        {found ? <OfferedPlan plan={found} /> : <Openers onRead={setRead} />}
        {found || inUse ? null : (
          <div className="take-answer">
            <p className="soft">{bring.open.self.about}</p>
            <Link href="/bring" className="button">
              {bring.open.self.name}
            </Link>
          </div>
        )}
      </div>
    </Page>
  );
}
