import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { ensureSite } from '../../scripts/build-site.ts';
import type { KnownServer } from '../../scripts/known-server.ts';
import { serveSite } from '../../scripts/serve-site.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const SERVER = { fhirServer: 'https://fhir.example.org/r4', clientId: null, signIn: [] };
const CLOSED = { ...SERVER, clientId: 'evenside "1" $&', signIn: ['https://login.example.org', 'https://fhir.example.org'] };

beforeAll(async () => {
  const built = await ensureSite(ROOT, () => undefined);
  if (!built.ok) throw new Error(built.error.words);
});

/** The page, its policy in the header, and what the service worker says of it. */
async function served(known: KnownServer | null) {
  const site = await serveSite(ROOT, 0, known);
  if (!site.ok) throw new Error(JSON.stringify(site.error));
  const get = (path: string) => fetch(new URL(path, site.value.url));
  const [page, worker] = [await get('index.html'), await get('sw.js')];
  const [html, script] = [await page.text(), await worker.text()];
  await site.value.close();
  const [, revision, integrity] = /\{url:"index\.html",revision:"([^"]*)",integrity:"([^"]*)"\}/.exec(script) ?? [];
  const hash = `sha256-${createHash('sha256').update(html).digest('base64')}`;
  return { html, hash, revision, integrity, page: page.headers, worker: worker.headers };
}

test.each([null, SERVER, CLOSED])('the service worker keeps the page as it is served, FHIR server %j', async (known) => {
  const { hash, integrity, page, worker } = await served(known);
  expect(integrity).toBe(hash);
  expect([page, worker].map((headers) => headers.get('cache-control'))).toEqual(['no-cache', 'no-cache']);
  expect(worker.get('content-type')).toMatch(/^text\/javascript/);
});

test('with a FHIR server the page is another one, which a service worker of before takes anew', async () => {
  const [plain, known] = [await served(null), await served(SERVER)];
  expect(known.revision).not.toBe(plain.revision);
  expect(known.html).toContain(`content="${SERVER.fhirServer}"`);
  expect(plain.html).not.toContain('fhir.example.org');
  for (const policy of [known.page.get('content-security-policy'), known.html]) {
    expect(policy).toMatch(/connect-src '?(?:&#39;)?self'?(?:&#39;)? https:\/\/fhir\.example\.org/);
  }
});

test('a page that is signed in from knows its own name and exactly the origins that give tokens, each once', async () => {
  const { html, page } = await served(CLOSED);
  expect(html).toContain('<meta name="evenside-fhir-client" content="evenside &quot;1&quot; $&amp;">');
  expect(html).toContain('<meta name="evenside-sign-in" content="https://login.example.org https://fhir.example.org">');
  expect(page.get('content-security-policy')).toMatch(
    /connect-src 'self' https:\/\/fhir\.example\.org https:\/\/login\.example\.org;/,
  );
});
