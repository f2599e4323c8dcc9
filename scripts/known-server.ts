import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { SITE_HEADERS, withOrigins } from './headers.ts';

const POLICY = 'Content-Security-Policy';

/** The FHIR server that a site knows, and how somebody signs in there. */
export interface KnownServer {
  /** Address of its FHIR base, without a slash at its end. */
  readonly fhirServer: string;
  /** Under which name this page is registered there, as a public client; null: an open server, without sign-in. */
  readonly clientId: string | null;
  /** Origins besides the server's own that give and take back tokens. */
  readonly signIn: readonly string[];
}

/** Whom the page may ask besides itself. */
const originsOf = ({ fhirServer, signIn }: KnownServer): readonly string[] => [
  ...new Set([new URL(fhirServer).origin, ...signIn]),
];

/** The headers of a site that knows a FHIR server, or none. */
export const headersFor = (known: KnownServer | null): Readonly<Record<string, string>> =>
  known === null ? SITE_HEADERS : { ...SITE_HEADERS, [POLICY]: withOrigins(SITE_HEADERS[POLICY] ?? '', originsOf(known)) };

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/** What the page is told, each in a tag of its own; read by `src/screens/server/known-server.ts`. */
const tagsOf = ({ fhirServer, clientId, signIn }: KnownServer): string => {
  const tags = { 'evenside-fhir-server': fhirServer, 'evenside-fhir-client': clientId, 'evenside-sign-in': signIn.join(' ') };
  return Object.entries(tags)
    .map(([name, content]) => (content ? `<meta name="${name}" content="${escaped(content)}">` : ''))
    .join('');
};

/**
 * The page with the server's address in it. Its own policy, in a tag, holds beside that of the header, so that both must let the server through.
 * @param dist folder of the built site
 * @returns null: another file than the page
 */
export function pageFor(dist: string, path: string, known: KnownServer): string | null {
  if (path !== '/' && path !== '/index.html') return null;
  const file = join(dist, 'index.html');
  if (!existsSync(file)) return null;
  const html = readFileSync(file, 'utf8');
  const tag = html.match(/<meta http-equiv="Content-Security-Policy"[^>]*>/)?.[0];
  if (!tag) throw new Error('pageFor requires a page with its policy in a tag, got none');
  const opened = tag.replace(/connect-src (?:'|&#39;)self(?:'|&#39;)/, (rule) => [rule, ...originsOf(known)].join(' '));
  return html.replace(tag, () => `${opened}${tagsOf(known)}`);
}

const hashOf = (text: string): string => createHash('sha256').update(text).digest('base64');

/** How the service worker names the page that it keeps, see `site-worker.ts`. */
const KEPT_PAGE = /(\{url:"index\.html",revision:")[^"]*(",integrity:"sha256-)[^"]*("\})/;

/**
 * The service worker that keeps the page with the server's address in it: it takes no page that has not the hash it names, and no new one for the same revision.
 * @param dist folder of the built site
 * @returns null: another file than the service worker
 */
export function workerFor(dist: string, path: string, known: KnownServer): string | null {
  const file = join(dist, 'sw.js');
  if (path !== '/sw.js' || !existsSync(file)) return null;
  const page = pageFor(dist, '/index.html', known);
  const worker = readFileSync(file, 'utf8');
  if (page === null || !KEPT_PAGE.test(worker))
    throw new Error('workerFor requires a service worker that keeps index.html, got none');
  const hash = hashOf(page);
  return worker.replace(KEPT_PAGE, (_, revision, integrity, end) => `${revision}${hash}${integrity}${hash}${end}`);
}
