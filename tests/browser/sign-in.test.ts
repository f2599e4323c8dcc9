/** A patient signs in at a clinic's server, sends, stays signed in, has records go by themselves, and signs out; a therapist's list takes them in. */
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { findChromium, launchChromium } from '../../scripts/chromium.ts';
import { type Site, serveSite } from '../../scripts/serve-site.ts';
import { CLIENT, smartEndpoint } from '../sync/sign-in/smart-endpoint.ts';
import { seed } from './seeded-diary.ts';
import { looked, opened } from './server-visit.ts';
import { fullDiary } from './two-weeks.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const HOUR_MS = 3_600_000;

let browser: Browser;
let clinic: Awaited<ReturnType<typeof smartEndpoint>>;
let site: Site;
/** How far the clinic's clock is ahead, ms: so tokens end. */
let ahead = 0;

beforeAll(async () => {
  const executable = findChromium(() => undefined);
  if (!executable.ok) throw new Error('these tests require Chromium, found none');
  browser = await launchChromium(executable.value);
  clinic = await smartEndpoint({ redirectUris: [], expiresIn: 600, clock: () => Date.now() + ahead });
  await clinic.repository.createResource({ resourceType: 'Patient', id: 'invented-1' });
  const served = await serveSite(ROOT, 0, { fhirServer: clinic.base, clientId: CLIENT, signIn: [clinic.origin] });
  if (!served.ok) throw new Error(`these tests require the site, got ${served.error.kind}`);
  site = served.value;
  clinic.register(site.url);
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
  await clinic?.close();
});

const documents = () => clinic.repository.all('DocumentReference').length;
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
/** To the clinic's own page, and back. */
async function signIn(page: Page, answer: 'Allow' | 'Refuse'): Promise<void> {
  await press(page, 'Sign in');
  await page.getByRole('heading', { name: 'Invented clinic' }).waitFor();
  await page.getByRole('link', { name: answer }).click();
}
/** Stores one entry of the diary, as somebody does. */
async function answerQuestions(page: Page): Promise<void> {
  await page.goto(`${site.url}#/questions`);
  await page.getByRole('heading', { level: 1, name: 'Before you start' }).waitFor();
  for (const question of await page.getByRole('radio', { name: 'No' }).all()) await question.check();
  await press(page, 'Done');
  await page.getByRole('heading', { level: 1, name: 'Today' }).waitFor();
}

test('signs in, sends, goes on after the token has ended, stays, sends by itself, and signs out', {
  timeout: 180_000,
}, async () => {
  const { page, faults: told, origins } = await opened(browser, site.url);
  await seed(page, fullDiary(1));
  await page.goto(`${site.url}#/server`);
  await page.getByText('Not signed in', { exact: true }).waitFor();
  const faults = [...(await looked(page, 'sign-in'))];

  await signIn(page, 'Refuse');
  await page.getByText(/^You were not let in/).waitFor();
  expect(page.url()).toBe(`${site.url}#/server`);

  await signIn(page, 'Allow');
  await page.getByText('Patient/invented-1').waitFor();
  expect(page.url()).toBe(`${site.url}#/server`);
  await page.getByText('Signed in', { exact: true }).waitFor();
  // Tokens are in the page's memory alone: nothing lies about, and another page knows of no sign-in.
  expect(await page.evaluate(() => JSON.stringify([{ ...localStorage }, { ...sessionStorage }, document.cookie]))).not.toMatch(
    /verifier|[0-9a-f]{8}-[0-9a-f]{4}-/,
  );
  await page.reload();
  await page.getByText('Not signed in', { exact: true }).waitFor();

  await page.getByRole('checkbox', { name: 'Stay signed in on this machine' }).check();
  await signIn(page, 'Allow');
  await page.getByText('Signed in', { exact: true }).waitFor();
  ahead += HOUR_MS;
  await press(page, 'Send now');
  await page.getByText(/^Sent: \d+ records\.$/).waitFor({ timeout: 60_000 });
  expect(clinic.seen.tokens.slice(-2)).toEqual(['authorization_code', 'refresh_token']);
  expect(clinic.seen.refused).toEqual([]);
  const first = documents();
  expect(first).toBeGreaterThan(5);

  // What is told goes by itself only once that is chosen; then at once, when the page is opened, and when the network is back.
  await answerQuestions(page);
  await page.goto(`${site.url}#/server`);
  await page.getByText('one record', { exact: true }).waitFor();
  expect(documents()).toBe(first);
  await page.getByRole('checkbox', { name: /^Send by itself/ }).check();
  await expect.poll(documents, { timeout: 30_000 }).toBe(first + 1);
  await answerQuestions(page);
  await expect.poll(documents, { timeout: 30_000 }).toBe(first + 2);
  await page.context().setOffline(true);
  await answerQuestions(page);
  ahead += HOUR_MS;
  expect(documents()).toBe(first + 2);
  await page.context().setOffline(false);
  await expect.poll(documents, { timeout: 30_000 }).toBe(first + 3);
  await page.goto(`${site.url}#/server`);
  await page.getByText('0 records', { exact: true }).waitFor();
  faults.push(...(await looked(page, 'by-itself')));

  await press(page, 'Sign out');
  await page.getByText('You are signed out, here and at the clinic.').waitFor();
  expect(clinic.good()).toBe(0);
  await answerQuestions(page);
  await page.getByText(/^One record waits for the clinic/).waitFor();
  faults.push(...(await looked(page, 'waits')));
  await page.reload();
  await page.getByText(/^One record waits for the clinic/).waitFor();
  await page.goto(`${site.url}#/server`);
  await page.getByText('Not signed in', { exact: true }).waitFor();
  expect(documents()).toBe(first + 3);

  await page.goto(`${site.url}?code=stolen&state=guessed`);
  await page.getByText(/^That sign-in did not begin here/).waitFor();
  expect(page.url()).toBe(`${site.url}#/server`);

  expect([...origins].toSorted()).toEqual([site.url.slice(0, -1), new URL(clinic.base).origin, clinic.origin].toSorted());
  expect(told).toEqual([]);
  expect(faults).toEqual([]);
});

test('who comes back from signing in to a locked page unlocks it and goes on signed in, however long that takes; nothing is lost', {
  timeout: 120_000,
}, async () => {
  const passphrase = 'ten grey herons by the weir';
  const { page, faults: told } = await opened(browser, site.url);
  await seed(page, fullDiary(1));
  await page.goto(`${site.url}#/lock`);
  await page.getByLabel('Passphrase', { exact: true }).fill(passphrase);
  await page.getByLabel('The same once more').fill(passphrase);
  await press(page, 'Turn the lock on');
  await page.getByText('The lock is on.').waitFor({ timeout: 60_000 });
  await page.goto(`${site.url}#/server`);
  await page.getByRole('checkbox', { name: 'Stay signed in on this machine' }).check();
  await signIn(page, 'Allow');
  // The page is a new one, so it is locked: neither code nor state lies in the address meanwhile.
  await page.getByRole('button', { name: 'Unlock' }).waitFor();
  expect(page.url()).toBe(`${site.url}#/server`);
  expect(await page.getByText('Patient/invented-1').count()).toBe(0);
  const unlock = async () => {
    await page.getByLabel('Passphrase', { exact: true }).fill(passphrase);
    await press(page, 'Unlock');
  };
  // The code was changed for tokens at once; the person takes longer than the first of them lasts.
  await expect.poll(() => clinic.seen.tokens.at(-1), { timeout: 30_000 }).toBe('authorization_code');
  ahead += HOUR_MS;
  await unlock();
  await page.getByText('Patient/invented-1').waitFor({ timeout: 60_000 });
  await page.getByText('Signed in', { exact: true }).waitFor();
  expect(page.url()).toBe(`${site.url}#/server`);
  const before = documents();
  await press(page, 'Send now');
  await page.getByText(/^Sent: \d+ records\.$/).waitFor({ timeout: 60_000 });
  expect(documents()).toBeGreaterThan(before);
  // What keeps somebody signed in was written once there was a key to seal it with: it is good after another lock.
  await page.reload();
  await page.getByRole('button', { name: 'Unlock' }).waitFor();
  await unlock();
  await page.getByText('Signed in', { exact: true }).waitFor({ timeout: 60_000 });
  await page.getByText('0 records', { exact: true }).waitFor();
  expect(clinic.seen.refused).toEqual([]);
  expect(told).toEqual([]);
});

test('a therapist’s list takes in by itself what is new of those of whom it was chosen', { timeout: 120_000 }, async () => {
  const { page, faults: told } = await opened(browser, `${site.url}#/people/new`);
  await page.getByLabel('Name or code').fill('Ina Invented');
  await press(page, 'Keep');
  await page.getByRole('link', { name: /The clinic’s server/ }).click();
  await page.getByText('Not signed in', { exact: true }).waitFor();
  expect(await page.getByRole('checkbox').count()).toBe(0);
  await signIn(page, 'Allow');
  await page.getByLabel('Patient id on the server').fill('invented-1');
  await press(page, 'Connect');
  await page.getByText('Patient/invented-1').waitFor();
  await page.getByRole('checkbox', { name: /^Take in by itself/ }).check();
  const faults = [...(await looked(page, 'desk-signed-in'))];
  await page.goto(`${site.url}#/people`);
  await page.getByText(`From the clinic’s server: ${documents()} records new, 0 changed by hand.`).waitFor({ timeout: 60_000 });
  faults.push(...(await looked(page, 'list-taken-in')));
  // The page is opened anew: whoever sits there now is not signed in.
  await page.reload();
  await page.getByText('Not everything could be taken in from the clinic’s server.').waitFor();
  faults.push(...(await looked(page, 'list-signed-out')));
  expect(told).toEqual([]);
  expect(faults).toEqual([]);
});
