import { parseArgs } from 'node:util';
import { fail, ok, type Result } from '../src/result.ts';

const USAGE = 'npm start [-- --port N] [--fhir-server URL [--client-id ID [--sign-in ORIGIN]]]';

/** `words`: what is wrong and how to ask for it, for a line of its own. */
export type ArgumentError = { readonly kind: 'bad-arguments'; readonly words: string };

/** The FHIR server that was named. */
export interface ServerArguments {
  /** Address of its base, without a slash at its end. */
  readonly fhirServer: string;
  /** How this page is registered there; null: an open server. */
  readonly clientId: string | null;
  /** The origin that gives tokens; null: as the server says. */
  readonly signIn: string | null;
}

/** What was asked for. */
export interface StartArguments {
  /** Null when none was. */
  readonly port: number | null;
  /** Null: the site knows none. */
  readonly server: ServerArguments | null;
}

const bad = (words: string) => fail<ArgumentError>({ kind: 'bad-arguments', words: `${words} Use it as: ${USAGE}` });

/** Hosts for which nothing leaves the machine, so that it need not be encrypted. */
const LOOPBACK = ['localhost', '127.0.0.1', '[::1]'];

/** An address that is safe to ask and holds no secret; null: it is none such. */
function safeUrl(text: string): URL | null {
  let url: URL;
  try {
    url = new URL(text);
  } catch {
    return null;
  }
  const isSafe = url.protocol === 'https:' || (url.protocol === 'http:' && LOOPBACK.includes(url.hostname));
  const isPlain = url.username === '' && url.password === '' && url.search === '' && url.hash === '';
  return isSafe && isPlain ? url : null;
}

/** What an OAuth 2.0 client id may hold (RFC 6749, appendix A.1), without blanks at its ends. */
const CLIENT_ID = /^[\x21-\x7e](?:[\x20-\x7e]{0,253}[\x21-\x7e])?$/;

function serverOf(server: string | undefined, clientId: string | undefined, signIn: string | undefined) {
  if (server === undefined)
    return clientId === undefined && signIn === undefined
      ? ok(null)
      : bad('--client-id and --sign-in say how to sign in to a FHIR server: name the server with --fhir-server URL too.');
  const url = safeUrl(server);
  if (!url)
    return bad(
      `The FHIR server must be an address such as https://fhir.example.org/r4 (http only on this machine itself), not "${server}".`,
    );
  if (clientId !== undefined && !CLIENT_ID.test(clientId))
    return bad(`The client id must be the plain text that the server gave this page, not "${clientId}".`);
  if (signIn !== undefined && clientId === undefined)
    return bad('--sign-in needs to know how this page is registered: add --client-id ID.');
  const origin = signIn === undefined ? null : safeUrl(signIn);
  if (signIn !== undefined && origin?.pathname !== '/')
    return bad(`The sign-in must be an origin such as https://login.example.org, not "${signIn}".`);
  return ok<ServerArguments>({
    fhirServer: url.href.replace(/\/+$/, ''),
    clientId: clientId ?? null,
    signIn: origin?.origin ?? null,
  });
}

/** Text options, by name. */
const OPTIONS = {
  port: { type: 'string' },
  'fhir-server': { type: 'string' },
  'client-id': { type: 'string' },
  'sign-in': { type: 'string' },
} as const;

/** Reads the words after `npm start --`. */
export function startArguments(args: readonly string[]): Result<StartArguments, ArgumentError> {
  let values: { readonly [name in keyof typeof OPTIONS]?: string | undefined };
  try {
    values = parseArgs({ args: [...args], options: OPTIONS }).values;
  } catch (cause) {
    const reason = cause instanceof Error ? (cause.message.split('. ')[0] ?? '') : String(cause);
    return bad(`${reason}.`);
  }
  const { port } = values;
  const number = port === undefined ? null : /^\d{1,5}$/.test(port) ? Number(port) : Number.NaN;
  if (number !== null && !(number >= 1 && number <= 65535))
    return bad(`The port must be a whole number from 1 to 65535, not "${port}".`);
  const server = serverOf(values['fhir-server'], values['client-id'], values['sign-in']);
  return server.ok ? ok({ port: number, server: server.value }) : server;
}
