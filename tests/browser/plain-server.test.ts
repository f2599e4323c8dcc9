/** The built site behind a server that sends none of its headers, as any static host is. */
import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContextOptions } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findChromium, launchChromium } from '../../scripts/chromium.ts';
import { META_POLICY, SITE_HEADERS } from '../../scripts/headers.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const DIST = join(ROOT, 'dist');
const PAGES = ['index.html', 'src/cli/measure.html', 'src/cli/bench.html'];
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
};

let server: Server;
let browser: Browser;
const address = (path: string) => `http://127.0.0.1:${(server.address() as AddressInfo).port}/${path}`;

beforeAll(async () => {
  server = createServer(async (request, response) => {
    const path = new URL(request.url ?? '/', 'http://localhost').pathname;
    const file = await readFile(join(DIST, path)).catch(() => null);
    response.writeHead(file ? 200 : 404, { 'Content-Type': TYPES[extname(path)] ?? 'application/octet-stream' }).end(file ?? '');
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const chromium = findChromium(() => {});
  if (!chromium.ok) throw new Error(chromium.error.words);
  // A name of its own for this machine, which is not a secure address as 127.0.0.1 is.
  browser = await launchChromium(chromium.value, [
    '--host-resolver-rules=MAP elsewhere.test 127.0.0.1, MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
  ]);
});
afterAll(async () => {
  await browser.close();
  server.close();
});

test.each(PAGES)('%s carries the policy of the headers before all that it loads', async (page) => {
  const html = await readFile(join(DIST, page), 'utf8');
  const policy = html.indexOf('http-equiv="Content-Security-Policy"');
  expect(policy).toBeGreaterThan(0);
  expect(policy).toBeLessThan(html.search(/<(script|link|style)/));
  expect(html.match(/<meta http-equiv="Content-Security-Policy" content="([^"]*)"/)?.[1]?.replaceAll('&#39;', "'")).toBe(
    META_POLICY,
  );
});

test('the tag says all that the header does, but for who may frame the page', () => {
  const header = SITE_HEADERS['Content-Security-Policy']?.split('; ') ?? [];
  const tag = META_POLICY.split('; ');
  expect(tag).toContain("connect-src 'self'");
  expect(header.filter((rule) => !tag.includes(rule))).toEqual(["frame-ancestors 'none'"]);
});

test('the page works, and the browser still refuses it any other address', async () => {
  const page = await browser.newPage();
  const errors: string[] = [];
  page.on('pageerror', ({ message }) => errors.push(message));
  page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
  await page.goto(address('index.html'));
  await page.getByRole('heading', { level: 1 }).waitFor();
  expect(errors).toEqual([]);
  const refused = await page.evaluate(async () => {
    const told = new Promise<string>((resolve) => {
      document.addEventListener('securitypolicyviolation', (event) => resolve(event.effectiveDirective), { once: true });
    });
    const failed = await fetch('https://elsewhere.invalid/').then(
      () => false,
      () => true,
    );
    return { failed, told: await told };
  });
  expect(refused).toEqual({ failed: true, told: 'connect-src' });
  await page.close();
});

test.each(['LICENSE', 'NOTICE.md'])('%s goes with the site as it is', async (name) => {
  expect(await readFile(join(DIST, name), 'utf8')).toBe(await readFile(join(ROOT, name), 'utf8'));
});

describe('where it can’t work, one sentence says so', () => {
  /** What somebody reads at an address, in a browser set so. */
  async function readsAt(url: string, options: BrowserContextOptions, sentence: string): Promise<string> {
    const context = await browser.newContext(options);
    try {
      const page = await context.newPage();
      await page.goto(url);
      // As it is drawn, so that what is hidden is not read.
      // biome-ignore lint/performance/useDomNodeTextContent: text that is not shown is not read by anybody.
      const read = () => page.locator('body').innerText();
      await expect.poll(read, { timeout: 30_000 }).toContain(sentence);
      return await read();
    } finally {
      await context.close();
    }
  }

  test('opened from a folder, in two languages', async () => {
    const read = await readsAt(pathToFileURL(join(DIST, 'index.html')).href, {}, 'its files are opened from a folder');
    expect(read).toContain('se abren desde una carpeta');
  });

  test('without JavaScript, in two languages', async () => {
    const read = await readsAt(address('index.html'), { javaScriptEnabled: false }, 'Evenside needs JavaScript');
    expect(read).toContain('Evenside necesita JavaScript');
  });

  test('at an address that is not secure: which to open, and nothing about another browser', async () => {
    const url = address('index.html').replace('127.0.0.1', 'elsewhere.test');
    const read = await readsAt(url, {}, 'This address is not a secure one. Open Evenside over https');
    expect(read).toContain('Evenside can’t work at this address');
    expect(read).not.toContain('keeps nothing');
  });
});
