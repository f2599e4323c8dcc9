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
