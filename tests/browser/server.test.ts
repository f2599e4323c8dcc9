/** A patient's page and a therapist's, each with a storage of its own, and a FHIR endpoint at another origin between them. */
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { findChromium, launchChromium } from '../../scripts/chromium.ts';
import { type Site, serveSite } from '../../scripts/serve-site.ts';
import { fhirEndpoint } from '../sync/endpoint/fhir-endpoint.ts';
import { seed } from './seeded-diary.ts';
import { looked, opened } from './server-visit.ts';
import { fullDiary } from './two-weeks.ts';

const ROOT = join(import.meta.dirname, '..', '..');

let browser: Browser;
let endpoint: Awaited<ReturnType<typeof fhirEndpoint>>;
let site: Site;
let down = false;

beforeAll(async () => {
  const executable = findChromium(() => undefined);
  if (!executable.ok) throw new Error('these tests require Chromium, found none');
  browser = await launchChromium(executable.value);
  endpoint = await fhirEndpoint({ fault: () => (down ? { status: 403 } : null) });
  await endpoint.repository.createResource({ resourceType: 'Patient', id: 'invented-1' });
  const served = await serveSite(ROOT, 0, { fhirServer: endpoint.base, clientId: null, signIn: [] });
  if (!served.ok) throw new Error(`these tests require the site, got ${served.error.kind}`);
  site = served.value;
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
  await endpoint?.close();
});

const connect = async (page: Page, id: string) => {
  await page.getByLabel('Patient id on the server').fill(id);
  await page.getByRole('button', { name: 'Connect', exact: true }).click();
};

test('what a patient sends is taken in at the desk; nobody but the page’s own server and this one is asked', {
  timeout: 120_000,
}, async () => {
  const patient = await opened(browser, site.url);
  await seed(patient.page, fullDiary(3));
  await patient.page.goto(`${site.url}#/report`);
  await patient.page.getByRole('link', { name: 'The clinic’s server' }).click();
  await patient.page.getByText(/anybody who can reach it can read/).waitFor();
  const faults = [...(await looked(patient.page, 'connect'))];
  await connect(patient.page, 'a b');
  await patient.page.getByText(/An id has 1 to 64/).waitFor();
  await connect(patient.page, 'nobody');
  await patient.page.getByText('The server knows nobody with this id: check it with the clinic.').waitFor();
  await connect(patient.page, 'invented-1');
  await patient.page.getByText('Patient/invented-1').waitFor();
  const waiting = Number(((await patient.page.locator('dd').nth(2).textContent()) ?? '').split(' ')[0]);
  expect(waiting).toBeGreaterThan(10);
  down = true;
  await patient.page.getByRole('button', { name: 'Send now' }).click();
  await patient.page.getByText('The server does not let this page in: ask the clinic for access.').waitFor();
  faults.push(...(await looked(patient.page, 'refused')));
  down = false;
  await patient.page.getByRole('button', { name: 'Send now' }).click();
  await patient.page.getByText(`Sent: ${waiting} records.`).waitFor({ timeout: 60_000 });
  expect(endpoint.repository.all('DocumentReference')).toHaveLength(waiting);
  faults.push(...(await looked(patient.page, 'sent')));

  const desk = await opened(browser, `${site.url}#/people/new`);
  await desk.page.getByLabel('Name or code').fill('Ina Invented');
  await desk.page.getByRole('button', { name: 'Keep' }).click();
  await desk.page.getByRole('link', { name: /The clinic’s server/ }).click();
  await connect(desk.page, 'invented-1');
  await desk.page.getByRole('button', { name: 'Take in now' }).click();
  await desk.page.getByText(`New here: ${waiting} records. Changed by hand: 0.`).waitFor({ timeout: 60_000 });
  faults.push(...(await looked(desk.page, 'taken')));
  await desk.page.getByRole('button', { name: 'Take in now' }).click();
  await desk.page.getByText('There is nothing new on the server.').waitFor();

  for (const { origins, faults: told } of [patient, desk]) {
    expect([...origins].toSorted()).toEqual([new URL(site.url).origin, new URL(endpoint.base).origin].toSorted());
    expect(told).toEqual([]);
  }
  expect(faults).toEqual([]);
  const refused = await desk.page.evaluate(() =>
    fetch('https://elsewhere.invalid/').then(
      () => false,
      () => true,
    ),
  );
  expect(refused).toBe(true);
});

test('in Spanish, nothing is cut off', async () => {
  const { page } = await opened(browser, site.url);
  await page.getByRole('button', { name: 'Español' }).click();
  await page.goto(`${site.url}#/server`);
  await page.getByText('El servidor de la clínica').first().waitFor();
  expect(await looked(page, 'spanish')).toEqual([]);
});

test('a page that was served without a server says nothing of one', async () => {
  const plain = await serveSite(ROOT, 0);
  if (!plain.ok) throw new Error('this test requires the site');
  const page = await (await browser.newContext()).newPage();
  await page.goto(`${plain.value.url}#/report`);
  await page
    .getByRole('link', { name: /record/i })
    .first()
    .waitFor();
  expect(await page.getByText('The clinic’s server').count()).toBe(0);
  expect(await page.content()).not.toContain('evenside-fhir-server');
  await plain.value.close();
});
