import { useServerWords } from '../words/server-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import type { ServerState } from './server-services.ts';

/** How the person stands to the server: who they are there, what waits, and when something last went or came. */
export function ServerFigures({ base, state }: { readonly base: string; readonly state: ServerState | null }) {
  const words = useServerWords();
  const { locale } = useWords();
  const connection = state?.connection;
  const moment = (at: string | null): string =>
    at === null ? words.never : new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short' }).format(new Date(at));
  const rows: readonly (readonly [string, string])[] = [
    [words.address, base],
    ...(state && state.signIn !== 'none' ? ([[words.signIn.state, words.signIn[state.signIn]]] as const) : []),
    ...(state && connection
      ? ([
          [words.patient, connection.patient],
          [words.waiting, words.records(state.waiting)],
          [words.lastSent, moment(connection.sentAt)],
          [words.lastTaken, moment(connection.takenAt)],
        ] as const)
      : []),
  ];
  return (
    <dl className="server-state">
      {rows.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
