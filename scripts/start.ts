/** `npm start`: builds what is missing, serves the app on this machine only, prints its address as the last line. */
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { fail, ok, type Result } from '../src/result.ts';
import { ensureSite } from './build-site.ts';
import { type ServeError, type Site, serveSite } from './serve-site.ts';

const ROOT = join(import.meta.dirname, '..');
/** Chosen: free of well-known services. */
const DEFAULT_PORT = 4310;
/** How many ports after the default are tried. */
const PORTS_TRIED = 20;
const BAD_ARGUMENTS = 2;

const USAGE = 'npm start [-- --port N]';

type ArgumentError = { readonly kind: 'bad-arguments'; readonly words: string };

/** @returns the port asked for, or null when none was */
function portOf(args: readonly string[]): Result<number | null, ArgumentError> {
  let port: string | undefined;
  try {
    port = parseArgs({ args: [...args], options: { port: { type: 'string' } } }).values.port;
  } catch (cause) {
    const reason = cause instanceof Error ? (cause.message.split('. ')[0] ?? '') : String(cause);
    return fail({ kind: 'bad-arguments', words: `${reason}. Use it as: ${USAGE}` });
  }
  if (port === undefined) return ok(null);
  const number = /^\d{1,5}$/.test(port) ? Number(port) : Number.NaN;
  if (number >= 1 && number <= 65535) return ok(number);
  return fail({
    kind: 'bad-arguments',
    words: `The port must be a whole number from 1 to 65535, not "${port}". Use it as: ${USAGE}`,
  });
}

async function onFreePort(): Promise<Result<Site, ServeError>> {
  for (let port = DEFAULT_PORT; port < DEFAULT_PORT + PORTS_TRIED; port += 1) {
    const site = await serveSite(ROOT, port);
    if (site.ok || site.error.kind !== 'port-taken') return site;
  }
  return serveSite(ROOT, 0);
}

function sayWhy(error: ServeError): string {
  switch (error.kind) {
    case 'port-taken':
      return `Port ${error.port} is taken by another program: stop that program or choose another port with --port N.`;
    case 'port-refused':
      return `Port ${error.port} can't be opened (${error.reason}): choose another one with --port N.`;
    default:
      return error satisfies never;
  }
}

function giveUp(words: string, exitCode: number): never {
  process.stderr.write(`${words}\n`);
  process.exit(exitCode);
}

const wanted = portOf(process.argv.slice(2));
if (!wanted.ok) giveUp(wanted.error.words, BAD_ARGUMENTS);
const built = await ensureSite(ROOT, (line) => process.stdout.write(`${line}\n`));
if (!built.ok) giveUp(built.error.words, 1);
const site = await (wanted.value === null ? onFreePort() : serveSite(ROOT, wanted.value));
if (!site.ok) giveUp(sayWhy(site.error), 1);
if (wanted.value === null && site.value.port !== DEFAULT_PORT) {
  // A browser keeps its data by address, port included.
  process.stdout.write(
    `Port ${DEFAULT_PORT} is taken, so this address is another one: sets stored at the usual address don't show here.\n`,
  );
}
process.stdout.write(`${site.value.url}\n`);
