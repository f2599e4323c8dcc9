import { type ReactNode, useCallback, useEffect, useRef, useState } from 'react';
import type { Result } from '../../result.ts';
import type { Sent } from '../../sync/send-waiting.ts';
import type { Taken } from '../../sync/take-in-new.ts';
import { DayProblem } from '../day/day-problem.tsx';
import { Notice } from '../parts/notice.tsx';
import { Page } from '../parts/page.tsx';
import { usePerson } from '../people/person-context.tsx';
import '../lock/lock-screen.css';
import '../record/record-screens.css';
import type { Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { useServerWords } from '../words/server-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import { ConnectForm } from './connect-form.tsx';
import { knownServer } from './known-server.ts';
import { ServerFaultNotice } from './server-fault.tsx';
import type { ServerFault, ServerServices, ServerState } from './server-services.ts';
import './server-screen.css';

function SentWords({ confirmed, unwanted }: Sent) {
  const words = useServerWords();
  const [first] = unwanted;
  const detail = first && 'detail' in first.why ? first.why.detail : '';
  const ids = unwanted.flatMap((each) => each.ids);
  return (
    <Notice icon={first ? 'warning' : 'check'} look={first ? 'caution' : 'calm'} title={words.sent(confirmed)}>
      {first ? <p>{words.unwanted(ids.length, detail)}</p> : null}
    </Notice>
  );
}

function TakenWords({ fresh, grown, conflicts, refused }: Taken) {
  const words = useServerWords();
  const isWhole = conflicts + refused.length === 0;
  return (
    <Notice icon={isWhole ? 'check' : 'warning'} look={isWhole ? 'calm' : 'caution'} title={words.taken(fresh, grown)}>
      {conflicts > 0 ? <p>{words.conflicts(conflicts)}</p> : null}
      {refused.length > 0 ? <p>{words.unread(refused.length)}</p> : null}
    </Notice>
  );
}

/** Sends one person's records to the server that the page knows, and takes in what is new there. Nothing goes by itself. */
export function ServerScreen() {
  const words = useServerWords();
  const { locale } = useWords();
  const { server } = useServices();
  const person = usePerson()?.person ?? null;
  const base = knownServer();
  const [state, setState] = useState<ServerState | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [fault, setFault] = useState<Problem | ServerFault | null>(null);
  const [told, setTold] = useState<ReactNode>(null);
  const [busy, setBusy] = useState(false);
  // A second press before the screen knows of the first.
  const going = useRef(false);

  const look = useCallback(async () => {
    if (base === null) return;
    const found = await (await server(base)).state();
    if (found.ok) setState(found.value);
    setProblem(found.ok ? null : found.error);
  }, [server, base]);
  useEffect(() => void look(), [look]);

  const doing = async <T,>(
    call: (services: ServerServices) => Promise<Result<T, Problem | ServerFault>>,
    say: (done: T) => ReactNode,
  ) => {
    if (going.current || base === null) return;
    going.current = true;
    setBusy(true);
    setFault(null);
    setTold(null);
    const done = await call(await server(base));
    await look();
    going.current = false;
    setBusy(false);
    if (done.ok) setTold(say(done.value));
    else setFault(done.error);
  };

  const moment = (at: string | null): string =>
    at === null ? words.never : new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short' }).format(new Date(at));
  const connection = state?.connection ?? null;
  return (
    <Page className="server" title={words.title} back={person ? '/' : '/report'}>
      {base === null ? (
        <p>{words.none}</p>
      ) : (
        <div className="record-parts">
          <Notice icon="lock" look="calm" title={words.leaves.title}>
            <p>{person ? words.leaves.person : words.leaves.self}</p>
            <p>{words.leaves.stays}</p>
          </Notice>
          <DayProblem problem={problem} />
          <dl className="server-state">
            <div>
              <dt>{words.address}</dt>
              <dd>{base}</dd>
            </div>
            {connection && state ? (
              <>
                <div>
                  <dt>{words.patient}</dt>
                  <dd>{connection.patient}</dd>
                </div>
                <div>
                  <dt>{words.waiting}</dt>
                  <dd>{words.records(state.waiting)}</dd>
                </div>
                <div>
                  <dt>{words.lastSent}</dt>
                  <dd>{moment(connection.sentAt)}</dd>
                </div>
                <div>
                  <dt>{words.lastTaken}</dt>
                  <dd>{moment(connection.takenAt)}</dd>
                </div>
              </>
            ) : null}
          </dl>
          {state && !connection ? (
            <ConnectForm
              busy={busy}
              onConnect={(id) =>
                void doing(
                  (each) => each.connect(id),
                  () => null,
                )
              }
            />
          ) : null}
          {connection ? (
            <div className="server-actions">
              <button
                type="button"
                className="button"
                data-look="main"
                disabled={busy}
                onClick={() =>
                  void doing(
                    (each) => each.send(),
                    (sent) => <SentWords {...sent} />,
                  )
                }
              >
                {busy ? words.working : words.send}
              </button>
              <button
                type="button"
                className="button"
                disabled={busy}
                onClick={() =>
                  void doing(
                    (each) => each.takeIn(),
                    (taken) => <TakenWords {...taken} />,
                  )
                }
              >
                {words.takeIn}
              </button>
            </div>
          ) : null}
          <ServerFaultNotice fault={fault} />
          <div role="status">{told}</div>
          {connection ? (
            <>
              <button
                type="button"
                className="button"
                disabled={busy}
                aria-describedby="server-disconnect"
                onClick={() =>
                  void doing(
                    (each) => each.disconnect(),
                    () => null,
                  )
                }
              >
                {words.disconnect}
              </button>
              <p id="server-disconnect" className="soft small">
                {words.disconnectAbout}
              </p>
            </>
          ) : null}
        </div>
      )}
    </Page>
  );
}
