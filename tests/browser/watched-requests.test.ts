import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { expect, test } from 'vitest';
import { findChromium, launchChromium } from '../../scripts/chromium.ts';
import { siteForTests } from './harness.ts';
import { watchRequests } from './watched-requests.ts';

const site = siteForTests();

/** A page that is not guarded by the site's own policy, so that its requests really start. */
async function unguarded(run: string): Promise<readonly string[]> {
  const executable = findChromium(() => {});
  if (!executable.ok) throw new Error(executable.error.words);
  const browser = await launchChromium(executable.value);
  try {
    const context = await browser.newContext();
    await context.route('https://page.test/', (route) => route.fulfill({ contentType: 'text/html', body: '<!doctype html>' }));
    const requests = watchRequests(context, 'https://page.test');
    const page = await context.newPage();
    await page.goto('https://page.test/');
    expect(requests.offOrigin()).toEqual([]);
    await page.evaluate(run);
    await expect.poll(() => requests.offOrigin().length).toBeGreaterThan(0);
    return requests.offOrigin();
  } finally {
    await browser.close();
  }
}

test('a request of a page to another origin is noticed', async () => {
  expect(await unguarded(`fetch('https://elsewhere.test/metrics', { method: 'POST', mode: 'no-cors' }).catch(() => {})`)).toEqual(
    ['https://elsewhere.test/metrics'],
  );
});

test('a request of a worker to another origin is noticed', async () => {
  const worker = `fetch('https://elsewhere.test/from-worker', { mode: 'no-cors' }).catch(() => {})`;
  const start = `window.kept = new Worker(URL.createObjectURL(new Blob([${JSON.stringify(worker)}], { type: 'text/javascript' }))); 0`;
  expect(await unguarded(start)).toEqual(['https://elsewhere.test/from-worker']);
});

test('a request of a service worker to another origin is noticed', async () => {
  const worker = `self.addEventListener('install', () => fetch('https://elsewhere.test/from-service-worker', { mode: 'no-cors' }).catch(() => {}))`;
  const executable = findChromium(() => {});
  if (!executable.ok) throw new Error(executable.error.words);
  const server = createServer((request, response) =>
    response
      .writeHead(200, { 'Content-Type': request.url === '/sw.js' ? 'text/javascript' : 'text/html' })
      .end(request.url === '/sw.js' ? worker : '<!doctype html>'),
  );
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const browser = await launchChromium(executable.value);
  try {
    const context = await browser.newContext();
    const requests = watchRequests(context, origin);
    const page = await context.newPage();
    await page.goto(`${origin}/`);
    await page.evaluate(() => navigator.serviceWorker.register('sw.js').then(() => null));
    await expect.poll(() => requests.offOrigin()).toEqual(['https://elsewhere.test/from-service-worker']);
    expect(requests.byServiceWorker).toContain('https://elsewhere.test/from-service-worker');
  } finally {
    await browser.close();
    server.close();
  }
});

test('the policy of the site stops a request to another origin, and the attempt is noticed', async () => {
  const visit = await site.open();
  const url = site.url();
  const context = await visit.page.context().browser()?.newContext();
  if (!context) throw new Error('the test requires a browser');
  const requests = watchRequests(context, new URL(url).origin);
  const page = await context.newPage();
  await page.goto(url);
  const sent = await page.evaluate(() =>
    fetch('https://elsewhere.test/metrics', { mode: 'no-cors' }).then(
      () => 'sent',
      () => 'stopped',
    ),
  );
  expect(sent).toBe('stopped');
  await expect.poll(() => requests.offOrigin().length).toBeGreaterThan(0);
  await context.close();
});

test('the first page opens without an error and asks its own origin only', async () => {
  const visit = await site.open();
  await visit.page.locator('#root > *').first().waitFor();
  expect(visit.pageErrors).toEqual([]);
  expect(visit.consoleErrors).toEqual([]);
  expect(visit.requests.all.length).toBeGreaterThan(1);
});
