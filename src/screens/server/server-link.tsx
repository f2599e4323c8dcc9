import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { useServerWords } from '../words/server-catalogues.ts';
import { knownServer } from './known-server.ts';

/** The way to the clinic's server; nothing where the page knows none. */
export function ServerLink({ look }: { readonly look: 'button' | 'part' }): ReactNode {
  const { open } = useServerWords();
  if (knownServer() === null) return null;
  return look === 'button' ? (
    <Link href="/server" className="button">
      {open.name}
    </Link>
  ) : (
    <Link href="/server">
      <strong>{open.name}</strong>
      <span className="soft small">{open.about}</span>
    </Link>
  );
}
