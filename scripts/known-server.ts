import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { SITE_HEADERS, withOrigin } from './headers.ts';

const POLICY = 'Content-Security-Policy';
/** In which tag of the page the address stands; read by `src/screens/server/known-server.ts`. */
const TAG = 'evenside-fhir-server';

/** The headers of a site that knows a FHIR server, or none. */
export const headersFor = (fhirServer: string | null): Readonly<Record<string, string>> =>
  fhirServer === null
    ? SITE_HEADERS
    : { ...SITE_HEADERS, [POLICY]: withOrigin(SITE_HEADERS[POLICY] ?? '', new URL(fhirServer).origin) };

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/**
 * The page with the server's address in it. Its own policy, in a tag, holds beside that of the header, so that both must let the server through.
 * @param dist folder of the built site
 * @returns null: another file than the page
 */
export function pageFor(dist: string, path: string, fhirServer: string): string | null {
  if (path !== '/' && path !== '/index.html') return null;
  const file = join(dist, 'index.html');
  if (!existsSync(file)) return null;
  const html = readFileSync(file, 'utf8');
  const tag = html.match(/<meta http-equiv="Content-Security-Policy"[^>]*>/)?.[0];
  if (!tag) throw new Error('pageFor requires a page with its policy in a tag, got none');
  const opened = tag.replace(/connect-src (?:'|&#39;)self(?:'|&#39;)/, (rule) => `${rule} ${new URL(fhirServer).origin}`);
  return html.replace(tag, `${opened}<meta name="${TAG}" content="${escaped(fhirServer)}">`);
}

const hashOf = (text: string): string => createHash('sha256').update(text).digest('base64');

/** How the service worker names the page that it keeps, see `site-worker.ts`. */
const KEPT_PAGE = /(\{url:"index\.html",revision:")[^"]*(",integrity:"sha256-)[^"]*("\})/;

/**
 * The service worker that keeps the page with the server's address in it: it takes no page that has not the hash it names, and no new one for the same revision.
 * @param dist folder of the built site
 * @returns null: another file than the service worker
 */
export function workerFor(dist: string, path: string, fhirServer: string): string | null {
  const file = join(dist, 'sw.js');
  if (path !== '/sw.js' || !existsSync(file)) return null;
  const page = pageFor(dist, '/index.html', fhirServer);
  const worker = readFileSync(file, 'utf8');
  if (page === null || !KEPT_PAGE.test(worker))
    throw new Error('workerFor requires a service worker that keeps index.html, got none');
  const hash = hashOf(page);
  return worker.replace(KEPT_PAGE, (_, revision, integrity, end) => `${revision}${hash}${integrity}${hash}${end}`);
}
