/** `npm start`: builds what is missing, serves the app on this machine only, prints its address as the last line. */
import { join } from 'node:path';
import { ok, type Result } from '../src/result.ts';
import { ensureSite } from './build-site.ts';
import type { KnownServer } from './known-server.ts';
import { type ServeError, type Site, serveSite } from './serve-site.ts';
import { signInOrigins } from './sign-in-origins.ts';
import { type ServerArguments, startArguments } from './start-arguments.ts';

const ROOT = join(import.meta.dirname, '..');
/** Chosen: free of well-known services. */
const DEFAULT_PORT = 4310;
/** How many ports after the default are tried. */
const PORTS_TRIED = 20;
const BAD_ARGUMENTS = 2;

async function onFreePort(known: KnownServer | null): Promise<Result<Site, ServeError>> {
  for (let port = DEFAULT_PORT; port < DEFAULT_PORT + PORTS_TRIED; port += 1) {
    const site = await serveSite(ROOT, port, known);
    if (site.ok || site.error.kind !== 'port-taken') return site;
  }
  return serveSite(ROOT, 0, known);
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

/** Where tokens are given is asked of the server itself unless it was named. */
async function knownServer(
  server: ServerArguments | null,
): Promise<Result<KnownServer | null, { readonly words: string; readonly kind: string }>> {
  if (server === null || server.signIn !== null || server.clientId === null)
    return ok(server && { ...server, signIn: server.signIn === null ? [] : [server.signIn] });
  const origins = await signInOrigins(server.fhirServer, fetch);
  return origins.ok ? ok({ ...server, signIn: origins.value }) : origins;
}

function giveUp(words: string, exitCode: number): never {
  process.stderr.write(`${words}\n`);
  process.exit(exitCode);
}

const wanted = startArguments(process.argv.slice(2));
if (!wanted.ok) giveUp(wanted.error.words, BAD_ARGUMENTS);
const { port, server } = wanted.value;
const found = await knownServer(server);
if (!found.ok) giveUp(found.error.words, 1);
const known = found.value;
const built = await ensureSite(ROOT, (line) => process.stdout.write(`${line}\n`));
if (!built.ok) giveUp(built.error.words, 1);
const site = await (port === null ? onFreePort(known) : serveSite(ROOT, port, known));
if (!site.ok) giveUp(sayWhy(site.error), 1);
if (port === null && site.value.port !== DEFAULT_PORT) {
  // A browser keeps its data by address, port included.
  process.stdout.write(
    `Port ${DEFAULT_PORT} is taken, so this address is another one: sets stored at the usual address don't show here.\n`,
  );
}
process.stdout.write(`${site.value.url}\n`);
