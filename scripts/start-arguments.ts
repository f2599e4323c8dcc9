import { parseArgs } from 'node:util';
import { fail, ok, type Result } from '../src/result.ts';

const USAGE = 'npm start [-- --port N] [--fhir-server URL]';

/** `words`: what is wrong and how to ask for it, for a line of its own. */
export type ArgumentError = { readonly kind: 'bad-arguments'; readonly words: string };

/** What was asked for. */
export interface StartArguments {
  /** Null when none was. */
  readonly port: number | null;
  /** Address of a FHIR server's base, without a slash at its end; null: the site knows none. */
  readonly fhirServer: string | null;
}

const bad = (words: string) => fail<ArgumentError>({ kind: 'bad-arguments', words: `${words} Use it as: ${USAGE}` });

/** Hosts for which nothing leaves the machine, so that it need not be encrypted. */
const LOOPBACK = ['localhost', '127.0.0.1', '[::1]'];

function serverOf(text: string): Result<string, ArgumentError> {
  const refused = bad(
    `The FHIR server must be an address such as https://fhir.example.org/r4 (http only on this machine itself), not "${text}".`,
  );
  let url: URL;
  try {
    url = new URL(text);
  } catch {
    return refused;
  }
  const isSafe = url.protocol === 'https:' || (url.protocol === 'http:' && LOOPBACK.includes(url.hostname));
  const isPlain = url.username === '' && url.password === '' && url.search === '' && url.hash === '';
  return isSafe && isPlain ? ok(url.href.replace(/\/+$/, '')) : refused;
}

/** Reads the words after `npm start --`. */
export function startArguments(args: readonly string[]): Result<StartArguments, ArgumentError> {
  let values: { readonly port?: string | undefined; readonly 'fhir-server'?: string | undefined };
  try {
    values = parseArgs({ args: [...args], options: { port: { type: 'string' }, 'fhir-server': { type: 'string' } } }).values;
  } catch (cause) {
    const reason = cause instanceof Error ? (cause.message.split('. ')[0] ?? '') : String(cause);
    return bad(`${reason}.`);
  }
  const { port } = values;
  const number = port === undefined ? null : /^\d{1,5}$/.test(port) ? Number(port) : Number.NaN;
  if (number !== null && !(number >= 1 && number <= 65535))
    return bad(`The port must be a whole number from 1 to 65535, not "${port}".`);
  const server = values['fhir-server'] === undefined ? ok(null) : serverOf(values['fhir-server']);
  return server.ok ? ok({ port: number, fhirServer: server.value }) : server;
}
