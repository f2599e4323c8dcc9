import { useStore } from 'zustand';
import { useServerWords } from '../words/server-catalogues.ts';
import { ServerFaultNotice } from './server-fault.tsx';
import { SentWords } from './server-said.tsx';
import type { ServerServices } from './server-services.ts';

/** What became of the last sending by itself: under way, in trouble, or what the server does not want. */
export function AutomaticSaid({ services }: { readonly services: ServerServices }) {
  const { automatic } = useServerWords();
  const { working, fault, sent } = useStore(services.automatic);
  if (working) return <p role="status">{automatic.working}</p>;
  if (fault) return <ServerFaultNotice fault={fault} title={automatic.trouble} />;
  return sent && sent.unwanted.length > 0 ? <SentWords {...sent} /> : null;
}
