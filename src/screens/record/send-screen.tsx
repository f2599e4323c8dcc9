import { type FormEvent, useRef, useState } from 'react';
import { localTime } from '../../dose/local-time.ts';
import { isShort, LEAST_CHARACTERS } from '../../record/lock/passphrase.ts';
import { LONGEST_NAME } from '../../record/person.ts';
import { fail } from '../../result.ts';
import { OptionCards } from '../choose/option-cards.tsx';
import { DayProblem } from '../day/day-problem.tsx';
import { PassphraseField } from '../lock/passphrase-field.tsx';
import { useLockWords } from '../lock/use-lock-words.ts';
import { clockNow } from '../parts/clock-now.ts';
import { Notice } from '../parts/notice.tsx';
import { Page } from '../parts/page.tsx';
import { saveFile } from '../parts/save-file.ts';
import { usePerson } from '../people/person-context.tsx';
import type { Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import '../lock/lock-screen.css';
import './record-screens.css';
import type { WrittenRecord } from './record-services.ts';
import { ShareDone } from './share-done.tsx';
import { useRecordWords } from './use-record-words.ts';

type Seal = 'sealed' | 'plain';

/** A passphrase for a new file, typed twice. */
function SealFields({
  both: [first, second],
  onChange,
}: {
  readonly both: readonly [string, string];
  readonly onChange: (both: readonly [string, string]) => void;
}) {
  const lock = useLockWords();
  const { send } = useRecordWords();
  return (
    <>
      <PassphraseField label={lock.passphrase} value={first} onChange={(value) => onChange([value, second])} kind="new" />
      <p className="soft">{lock.hint(LEAST_CHARACTERS)}</p>
      <PassphraseField label={lock.again} value={second} onChange={(value) => onChange([first, value])} kind="new" />
      <p>
        <strong>{send.forgotten}</strong>
      </p>
    </>
  );
}

/** Saves somebody's whole record as one file, to be sent by whichever way they choose. */
export function SendScreen() {
  const person = usePerson()?.person ?? null;
  const whose = person ? 'person' : 'self';
  const { send } = useRecordWords();
  const lock = useLockWords();
  const services = useServices();
  const [name, setName] = useState('');
  const [seal, setSeal] = useState<Seal>('sealed');
  const [both, setBoth] = useState<readonly [string, string]>(['', '']);
  const [fault, setFault] = useState<string | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [saved, setSaved] = useState<{ readonly file: string; readonly written: WrittenRecord } | null>(null);
  const [busy, setBusy] = useState(false);
  const [share, setShare] = useState(0);
  // A second press before the screen knows of the first.
  const going = useRef(false);

  const save = async (event: FormEvent) => {
    event.preventDefault();
    if (going.current) return;
    setSaved(null);
    setProblem(null);
    const [passphrase, again] = both;
    const wrong = isShort(passphrase) ? send.short(LEAST_CHARACTERS) : passphrase === again ? null : lock.differs;
    setFault(seal === 'sealed' ? wrong : null);
    if (seal === 'sealed' && wrong) return;
    going.current = true;
    setBusy(true);
    setShare(0);
    const said = name.trim();
    const who = { name: said === '' ? null : said, affectedSide: person?.affectedSide ?? null };
    const written = await (await services.records())
      .write(who, seal === 'sealed' ? passphrase : null, setShare)
      .catch(() => fail({ kind: 'unexpected' } as const));
    going.current = false;
    setBusy(false);
    if (!written.ok) return setProblem(written.error);
    const file = `evenside-record-${localTime(clockNow()).day}.zip`;
    saveFile(file, written.value.file, 'application/zip');
    setSaved({ file, written: written.value });
    setBoth(['', '']);
  };

  return (
    <Page className="send-record" title={send.title[whose]} lead={send.lead[whose]} back="/report">
      <form className="record-parts" onSubmit={(event) => void save(event)}>
        <Notice icon="lock" look="calm" title={send.health.title}>
          <p>{send.health.todo}</p>
        </Notice>
        <OptionCards
          legend={send.seal}
          name="seal"
          options={(['sealed', 'plain'] as const).map((value) => ({ value, ...send[value] }))}
          chosen={seal}
          onChoose={(value) => {
            setSeal(value);
            setFault(null);
          }}
        />
        {seal === 'sealed' ? <SealFields both={both} onChange={setBoth} /> : null}
        <label className="record-field">
          {send.name}
          <input
            type="text"
            value={name}
            maxLength={LONGEST_NAME}
            autoComplete="off"
            aria-describedby="record-name-hint"
            onChange={({ target }) => setName(target.value)}
          />
        </label>
        <p id="record-name-hint" className="soft small">
          {send.nameHint}
        </p>
        {fault ? (
          <p className="lock-differs" role="alert">
            {fault}
          </p>
        ) : null}
        <DayProblem problem={problem} />
        {busy ? <ShareDone share={share} name={send.working} /> : null}
        <button type="submit" className="button" data-look="main" disabled={busy}>
          {busy ? send.working : send.save}
        </button>
        <div role="status">
          {saved ? (
            <Notice icon="check" look="calm" title={send.saved(saved.file)}>
              <p>{send.inIt(saved.written.sets, saved.written.entries)}</p>
              {saved.written.damaged > 0 ? <p>{send.damaged(saved.written.damaged)}</p> : null}
            </Notice>
          ) : null}
        </div>
      </form>
    </Page>
  );
}
