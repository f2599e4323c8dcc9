/** The app without a network, its new versions, and models that are cut off or wrong; under a sub-path of a server without the site's headers. */
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { fillWithPeople } from '../../scripts/bench/many-people.ts';
import { type ChangingSite, serveChangingSite } from './changing-site.ts';
import { siteForTests } from './harness.ts';

let server: ChangingSite;
const site = siteForTests({
  keepsSite: true,
  serve: async () => {
    server = await serveChangingSite();
    return server;
  },
});

const CLIP = join(import.meta.dirname, '..', '..', 'recordings', 'example-foot-taps.mp4');
const MODEL = 'models/pose_full.task';
/** More than the site takes, less than with its model, bytes. */
const ROOM_FOR_THE_SITE = 20_000_000;
/** The model starts, and a set ends, as fast as a slow, shared machine allows. */
const SLOW_MS = 240_000;

const heading = (page: Page, name: string | RegExp) =>
  page.getByRole('heading', { level: 1, name }).waitFor({ timeout: SLOW_MS });
const ready = (page: Page) => page.getByText('Ready to work without a network').waitFor({ timeout: SLOW_MS });
const announced = (page: Page) => page.getByText('A new version is ready.');

/** Measures the film of the recorded example as a file, until its repetitions are counted. */
async function beginFilm(page: Page): Promise<void> {
  await page.setInputFiles('input[type=file]', CLIP);
  await heading(page, 'What will you do?');
  await page.locator('.choose button[type=submit]').click();
  await page.locator('.phase-banner[data-stage="counting"]').waitFor({ timeout: SLOW_MS });
}

/** The same, to its result. */
async function measureFilm(page: Page): Promise<void> {
  await beginFilm(page);
  await page.waitForURL(/#\/set\//, { timeout: SLOW_MS });
  await heading(page, /^Foot taps/);
}

/** Serves another version of the first page from now on, and the service worker that goes with it. */
async function serveVersion(name: string): Promise<void> {
  const index = (await server.built('index.html'))
    .toString()
    .replace('</title>', `</title><meta name="version" content="${name}">`);
  const digest = createHash('sha256').update(index).digest('base64');
  const worker = (await server.built('sw.js')).toString();
  const changed = worker.replace(
    /\{url:"index\.html",revision:"[^"]*",integrity:"[^"]*"\}/,
    `{url:"index.html",revision:"${name}",integrity:"sha256-${digest}"}`,
  );
  expect(changed).not.toBe(worker);
  server.replace('index.html', index);
  server.replace('sw.js', changed);
}

const versionOf = (page: Page) =>
  page.evaluate(() => document.querySelector('meta[name="version"]')?.getAttribute('content') ?? 'as built');
const askForNewVersion = (page: Page) =>
  page.evaluate(() => navigator.serviceWorker.getRegistration().then((registration) => registration?.update().then(() => null)));

test('after the first visit a set is measured without a network, in both languages', async () => {
  const { page, context, requests, pageErrors } = await site.open();
  await ready(page);
  expect(requests.byServiceWorker.length).toBeGreaterThan(100);
  await context.setOffline(true);
  await page.reload();
  await heading(page, /^Your leg exercises/);
  await ready(page);
  await measureFilm(page);
  await page.goto(`${site.url()}#/today`);
  await heading(page, 'Today');
  await page.goto(`${site.url()}#/`);
  await page.getByRole('button', { name: 'Español' }).click();
  await heading(page, /^Sus ejercicios/);
  await page.reload();
  await heading(page, /^Sus ejercicios/);
  await page.getByText('Listo para funcionar sin red').waitFor();
  await page
    .getByText(/^Toques|^Golpes|^Elevaciones/)
    .first()
    .waitFor();
  expect(pageErrors).toEqual([]);
});

test('a new version is told between sets, and taken in every tab, but not while one of them is in the middle of something', async () => {
  const { page, context, pageErrors } = await site.open();
  await ready(page);
  const other = await context.newPage();
  await other.goto(`${site.url()}#/plan`);
  await heading(other, 'Your plan');
  try {
    await page.getByRole('button', { name: 'See it on a recorded example' }).click();
    await page.locator('.phase-banner:not([data-stage="opening"])').waitFor({ timeout: SLOW_MS });
    await serveVersion('second');
    await askForNewVersion(page);
    await page.waitForFunction(() =>
      navigator.serviceWorker.getRegistration().then((registration) => registration?.waiting != null),
    );
    // It waits, and nothing says so while the set runs.
    expect(await announced(page).count()).toBe(0);
    await page.getByRole('button', { name: /^Stop/ }).click();
    await page.goto(`${site.url()}#/`);
    await announced(page).waitFor();
    expect(await versionOf(page)).toBe('as built');
    expect(await announced(other).count()).toBe(0);
    await page.getByRole('button', { name: 'Use it now' }).click();
    await page.getByText(/^Another tab of Evenside is in the middle of something\./).waitFor();
    expect(await versionOf(page)).toBe('as built');
    await other.goto(`${site.url()}#/today`);
    await announced(other).waitFor();
    await page.getByRole('button', { name: 'Use it now' }).click();
    await expect.poll(() => versionOf(page).catch(() => ''), { timeout: SLOW_MS }).toBe('second');
    await expect.poll(() => versionOf(other).catch(() => ''), { timeout: SLOW_MS }).toBe('second');
    await heading(page, /^Your leg exercises/);
    expect(await announced(page).count()).toBe(0);
  } finally {
    server.restore();
  }
  expect(pageErrors).toEqual([]);
});

test('what was typed keeps a new version back until the screen is left', async () => {
  const { page } = await site.open('#/people');
  await heading(page, 'People');
  await fillWithPeople(page, { people: 8, setsEach: 0, withFacts: true });
  await page.reload();
  await page.getByLabel('Find by name').fill('In');
  try {
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null, null, { timeout: SLOW_MS });
    await serveVersion('third');
    await askForNewVersion(page);
    await page.waitForFunction(() =>
      navigator.serviceWorker.getRegistration().then((registration) => registration?.waiting != null),
    );
    expect(await announced(page).count()).toBe(0);
    await page.goto(`${site.url()}#/`);
    await announced(page).waitFor();
  } finally {
    server.restore();
  }
});

test('a model that is cut off goes on where it broke off', async () => {
  server.cutNext(MODEL, 3_000_000);
  const before = server.asked.length;
  const { page } = await site.open();
  await ready(page);
  const asked = server.asked.slice(before).filter((path) => path.startsWith(MODEL));
  expect(asked).toHaveLength(2);
  expect(asked[1]).toMatch(/ bytes=[1-9]\d{5,}-$/);
});

test('without room for the model it works for this visit, one sentence says that it could not be kept, and nothing of it stays', async () => {
  // An address of the site without the app, so that there is too little room from the beginning: enough for the site, not for its model.
  const { page, context, pageErrors } = await site.open('manifest.webmanifest');
  const devtools = await context.newCDPSession(page);
  await devtools.send('Storage.overrideQuotaForOrigin', { origin: new URL(site.url()).origin, quotaSize: ROOM_FOR_THE_SITE });
  const before = server.asked.length;
  const modelsAsked = () => server.asked.slice(before).filter((path) => path.startsWith(MODEL)).length;
  await page.goto(site.url());
  await page.getByText('There is no room to keep Evenside for the time without a network').waitFor({ timeout: SLOW_MS });
  const kept = await page.evaluate(async () => {
    const names = await caches.keys();
    const keys = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
    return keys.flat().map(({ url }) => url);
  });
  expect(kept.length).toBeGreaterThan(100);
  expect(kept.filter((url) => url.includes('/models/'))).toEqual([]);
  expect(modelsAsked()).toBe(1);
  // Even if the network goes meanwhile.
  await context.setOffline(true);
  await beginFilm(page);
  expect(modelsAsked()).toBe(1);
  expect(pageErrors).toEqual([]);
});

test('without room for the site nothing of it stays, and the same sentence says so', async () => {
  const { page, context } = await site.open('manifest.webmanifest');
  const devtools = await context.newCDPSession(page);
  await devtools.send('Storage.overrideQuotaForOrigin', { origin: new URL(site.url()).origin, quotaSize: 3_000_000 });
  await page.goto(`${site.url()}#/stored`);
  await page.getByText('There is no room to keep Evenside for the time without a network').waitFor({ timeout: SLOW_MS });
  await expect.poll(() => page.evaluate(() => caches.keys())).toEqual([]);
});

test('a model with a wrong hash is told in one sentence, and neither used nor kept', async () => {
  const wrong = await server.built(MODEL);
  wrong[1_000_000] = (wrong[1_000_000] ?? 0) ^ 1;
  server.replace(MODEL, wrong);
  try {
    const { page } = await site.open('#/stored');
    await page.getByText('Not all came. It is tried again at the next visit.').waitFor({ timeout: SLOW_MS });
    await page.goto(`${site.url()}#/`);
    await page.getByRole('button', { name: 'See it on a recorded example' }).click();
    await page.getByText('The model that sees the leg is not the right one, so it is not used.').waitFor({ timeout: SLOW_MS });
    expect(await page.evaluate(() => caches.has('evenside-models'))).toBe(false);
  } finally {
    server.restore();
  }
});
