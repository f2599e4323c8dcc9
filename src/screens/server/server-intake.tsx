import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import { Notice } from '../parts/notice.tsx';
import { useServices } from '../services-context.tsx';
import { useServerWords } from '../words/server-catalogues.ts';
import { knownServer } from './known-server.ts';
import './server-intake.css';
import type { TakenForAll } from './server-services.ts';

const Said = ({ text }: { readonly text: string }) => (
  <p className="server-intake" role="status">
    {text}
  </p>
);

/** Takes in what is new of all people of whom that was chosen, when the list opens. @param onNew something came */
export function ServerIntake({ onNew }: { readonly onNew: () => void }) {
  const { intake } = useServerWords();
  const outer = useServices();
  const [taken, setTaken] = useState<TakenForAll | 'working' | null>(null);
  useEffect(() => {
    const known = knownServer();
    if (!known) return;
    let wanted = true;
    const begin = async () => {
      const services = await outer.server(known);
      // Most lists have nobody of whom it was chosen: then there is nothing to say.
      const slow = setTimeout(() => wanted && setTaken('working'), 300);
      const found = await services.takeInForAll().finally(() => clearTimeout(slow));
      if (!wanted) return;
      setTaken(found);
      if (found.fresh + found.grown > 0) onNew();
    };
    begin().catch(() => undefined);
    return () => {
      wanted = false;
    };
  }, [outer, onNew]);
  if (taken === null) return null;
  if (taken === 'working') return <Said text={intake.working} />;
  const [first] = taken.failed;
  if (first)
    return (
      <div className="server-intake">
        <Notice icon="warning" look="caution" title={intake.failed}>
          <Link href={`/person/${first.person}/server`} className="button">
            {intake.look}
          </Link>
        </Notice>
      </div>
    );
  return taken.fresh + taken.grown > 0 ? <Said text={intake.new(taken.fresh, taken.grown)} /> : null;
}
