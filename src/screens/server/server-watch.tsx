import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import { useStore } from 'zustand';
import { useCalm } from '../offline/use-calm.ts';
import '../offline/site-watch.css';
import { useServices } from '../services-context.tsx';
import { useServerWords } from '../words/server-catalogues.ts';
import { knownServer } from './known-server.ts';
import type { ServerServices } from './server-services.ts';

/** Somebody who is signed out must do something before anything can go; all other trouble is told on the server's own screen. */
function SignInNeeded({ services }: { readonly services: ServerServices }) {
  const { automatic } = useServerWords();
  const fault = useStore(services.automatic, (state) => state.fault);
  const isOut = fault?.kind === 'server' && fault.error.kind === 'signed-out';
  const [waiting, setWaiting] = useState(0);
  useEffect(() => {
    if (!isOut) return;
    void services.state().then((found) => found.ok && setWaiting(found.value.waiting));
  }, [isOut, services]);
  if (!isOut || waiting === 0) return null;
  return (
    <>
      <p>{automatic.signedOut(waiting)}</p>
      <Link href="/server" className="button">
        {automatic.look}
      </Link>
    </>
  );
}

/** Sends one's own records by themselves, if that was chosen: when the page is opened, after something was stored, when the network is back, and again after trouble. */
export function ServerWatch() {
  const outer = useServices();
  const calm = useCalm();
  const [services, setServices] = useState<ServerServices | null>(null);
  useEffect(() => {
    const known = knownServer();
    if (!known) return;
    let wanted = true;
    const stops: (() => void)[] = [];
    const begin = async () => {
      const [found, { keepSending }] = await Promise.all([outer.server(known), import('./keep-sending.ts')]);
      if (!wanted) return;
      setServices(found);
      const sending = keepSending({
        services: found,
        isOnline: () => navigator.onLine,
        chance: Math.random,
        onFault: (error) => reportError(error),
      });
      window.addEventListener('online', sending.now);
      window.addEventListener('offline', sending.offline);
      stops.push(outer.onStored(sending.now), sending.stop, () => {
        window.removeEventListener('online', sending.now);
        window.removeEventListener('offline', sending.offline);
      });
      sending.now();
    };
    // Where it can't be loaded, nothing goes by itself until the page is opened again.
    begin().catch(() => undefined);
    return () => {
      wanted = false;
      for (const stop of stops) stop();
    };
  }, [outer]);
  return (
    <div className="site-watch" aria-live="polite">
      {services && calm ? <SignInNeeded services={services} /> : null}
    </div>
  );
}
