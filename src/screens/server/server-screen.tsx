import { type ReactNode, useCallback, useEffect, useRef, useState } from 'react';
import type { Result } from '../../result.ts';
import { DayProblem } from '../day/day-problem.tsx';
import { Notice } from '../parts/notice.tsx';
import { Page } from '../parts/page.tsx';
import { usePerson } from '../people/person-context.tsx';
import '../lock/lock-screen.css';
import '../record/record-screens.css';
import type { Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { useServerWords } from '../words/server-catalogues.ts';
import { AutomaticSaid } from './automatic-said.tsx';
import { ConnectForm } from './connect-form.tsx';
import { type KnownServer, knownServer } from './known-server.ts';
import { ServerChoice } from './server-choice.tsx';
import { ServerFaultNotice } from './server-fault.tsx';
import { ServerFigures } from './server-figures.tsx';
import { SentWords, SignedOutWords, TakenWords } from './server-said.tsx';
import type { ServerFault, ServerServices, ServerState } from './server-services.ts';
import './server-screen.css';
import { SignInForm } from './sign-in-form.tsx';

type Done<T> = Result<T, Problem | ServerFault>;

/** What can be done with the server, and what became of it. */
function ServerParts({ known, services }: { readonly known: KnownServer; readonly services: ServerServices }) {
  const words = useServerWords();
  const person = usePerson()?.person ?? null;
  const [state, setState] = useState<ServerState | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [fault, setFault] = useState<Problem | ServerFault | null>(null);
  const [told, setTold] = useState<ReactNode>(null);
  const [busy, setBusy] = useState(false);
  // A second press before the screen knows of the first.
  const going = useRef(false);

  const look = useCallback(async () => {
    const found = await services.state();
    if (found.ok) setState(found.value);
    setProblem(found.ok ? null : found.error);
  }, [services]);
  useEffect(() => {
    void look();
    // What goes by itself changes what waits.
    return services.automatic.subscribe(() => void look());
  }, [look, services]);

  const doing = async <T,>(call: () => Promise<Done<T>>, say: (done: T) => ReactNode = () => null) => {
    if (going.current) return;
    going.current = true;
    setBusy(true);
    setFault(null);
    setTold(null);
    const done = await call();
    await look();
    going.current = false;
    setBusy(false);
    if (done.ok) setTold(say(done.value));
    else setFault(done.error);
  };
  const choose = async (automatic: boolean): Promise<Done<null>> => {
    // Shown at once; what is stored is looked at afterwards.
    setState((now) => now && { ...now, automatic });
    const chosen = await services.choose(automatic);
    if (chosen.ok && automatic && !person) void services.sendByItself().catch(reportError);
    return chosen;
  };
  const signOut = async (): Promise<Done<boolean>> => ({ ok: true, value: (await services.signOut()) ?? true });

  const { connection = null, signIn = 'none', returned = null } = state ?? {};
  const isOut = signIn === 'out';
  return (
    <>
      <DayProblem problem={problem} />
      <ServerFigures base={known.base} state={state} />
      {isOut ? <SignInForm mayKeep={!person} busy={busy} onGo={(keep) => void doing(() => services.signIn(keep))} /> : null}
      {state && !connection && !isOut ? (
        <ConnectForm open={signIn === 'none'} busy={busy} onConnect={(id) => void doing(() => services.connect(id))} />
      ) : null}
      {connection && !isOut ? (
        <div className="server-actions">
          <button
            type="button"
            className="button"
            data-look="main"
            disabled={busy}
            onClick={() => void doing(services.send, (sent) => <SentWords {...sent} />)}
          >
            {busy ? words.working : words.send}
          </button>
          <button
            type="button"
            className="button"
            disabled={busy}
            onClick={() => void doing(services.takeIn, (taken) => <TakenWords {...taken} />)}
          >
            {words.takeIn}
          </button>
        </div>
      ) : null}
      <ServerFaultNotice fault={fault ?? (returned && { kind: 'sign-in', error: returned })} />
      <div role="status">{told}</div>
      {connection ? (
        <>
          <ServerChoice
            name={person ? words.automatic.takeIn : words.automatic.send}
            about={person ? words.automatic.takeInAbout : words.automatic.sendAbout}
            chosen={state?.automatic ?? false}
            disabled={busy}
            onChoose={(chosen) => void doing(() => choose(chosen))}
          />
          {person ? null : <AutomaticSaid services={services} />}
        </>
      ) : null}
      {signIn === 'in' ? (
        <button
          type="button"
          className="button"
          disabled={busy}
          onClick={() => void doing(signOut, (there) => <SignedOutWords there={there} />)}
        >
          {words.signIn.end}
        </button>
      ) : null}
      {connection ? (
        <>
          <button
            type="button"
            className="button"
            disabled={busy}
            aria-describedby="server-disconnect"
            onClick={() => void doing<null>(services.disconnect)}
          >
            {words.disconnect}
          </button>
          <p id="server-disconnect" className="soft small">
            {words.disconnectAbout}
          </p>
        </>
      ) : null}
    </>
  );
}

/** Sends one person's records to the server that the page knows, and takes in what is new there. Nothing goes by itself unless that is chosen here. */
export function ServerScreen() {
  const words = useServerWords();
  const { server } = useServices();
  const person = usePerson()?.person ?? null;
  const [known] = useState(knownServer);
  const [services, setServices] = useState<ServerServices | null>(null);
  useEffect(() => {
    if (known) server(known).then(setServices, reportError);
  }, [server, known]);
  return (
    <Page className="server" title={words.title} back={person ? '/' : '/report'}>
      {known === null ? (
        <p>{words.none}</p>
      ) : (
        <div className="record-parts">
          <Notice icon="lock" look="calm" title={words.leaves.title}>
            <p>{person ? words.leaves.person : words.leaves.self}</p>
            <p>{words.leaves.stays}</p>
          </Notice>
          {services ? <ServerParts known={known} services={services} /> : null}
        </div>
      )}
    </Page>
  );
}
