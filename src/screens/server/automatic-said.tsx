import { useStore } from 'zustand';
import { useServerWords } from '../words/server-catalogues.ts';
import { passingTrouble } from './keep-sending.ts';
import { ServerFaultNotice } from './server-fault.tsx';
import { SentWords } from './server-said.tsx';
import type { ServerServices } from './server-services.ts';

/** What became of the last sending by itself: under way, in trouble, or what the server does not want. */
export function AutomaticSaid({ services }: { readonly services: ServerServices }) {
  const { automatic } = useServerWords();
  const state = useStore(services.automatic);
  const { working, fault, sent } = state;
  if (working) return <p role="status">{automatic.working}</p>;
  const title = passingTrouble(state) ? automatic.troubleForNow : automatic.trouble;
  if (fault) return <ServerFaultNotice fault={fault} title={title} />;
  return sent && sent.unwanted.length > 0 ? <SentWords {...sent} /> : null;
}
