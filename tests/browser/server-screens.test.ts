/** What is on the screens where the page knows a clinic's server: signing in, what waits, a person of the list. */
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { fillWithPeople } from '../../scripts/bench/many-people.ts';
import { serveSite } from '../../scripts/serve-site.ts';
import { wentWell } from '../record/went-well.ts';
import { faultsOf, type LookOptions } from './every-screen/look.ts';
import { siteForTests } from './harness.ts';
import { seed, seededDiary } from './seeded-diary.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const known = { fhirServer: 'https://fhir.example.org/r4', clientId: 'evenside-test', signIn: ['https://login.example.org'] };
const site = siteForTests({ serve: async () => wentWell(await serveSite(ROOT, 0, known)) });
const PERSON = '00000000-0000-4000-8100-000000000001';

const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name }).waitFor();

/** Connected, with something that waits, sent by itself if anybody were signed in. */
const rows = {
  servers: [
    {
      person: 'me',
      server: known.fhirServer,
      patient: 'Patient/invented-1',
      cursor: null,
      sentAt: '2026-03-01T10:00:00.000Z',
      takenAt: null,
    },
  ],
  serverChoices: [{ person: 'me', server: known.fhirServer, automatic: true, refreshToken: null }],
  diary: seededDiary().rows.diary ?? [],
};

test.each([
  ['en', 'The clinic’s server', /^You are not signed in at the clinic/, /^\d+ records wait for the clinic/],
  ['es', 'El servidor de la clínica', /^No hay sesión abierta en la clínica/, /^\d+ registros esperan para la clínica/],
] as const)('%s: signing in, what waits, and a person of the list have no fault', async (language, title, out, waits) => {
  const { page } = await site.open();
  if (language === 'es') await page.getByRole('button', { name: 'Español' }).click();
  const faults: string[] = [];
  const look = async (screen: string, options: LookOptions = {}) => {
    const words = language === 'es' ? ({ wordsOnly: true } as const) : {};
    faults.push(...(await faultsOf(page, screen, { tree: false, ...words, ...options })));
  };
  await page.goto(`${site.url()}#/server`);
  await heading(page, title);
  await page.getByRole('checkbox').waitFor();
  await look(`server, ${language}`);
  await seed(page, rows);
  await page.getByText(out).waitFor();
  await look(`server that nobody is signed in to, ${language}`);
  // What is long in English is long in Spanish: the screen itself is enough there.
  if (language === 'es') return expect(faults).toEqual([]);
  await page.goto(`${site.url()}#/`);
  await page.getByText(waits).waitFor();
  // Tab goes round this screen in every-screen.test.ts; here it waits for the server meanwhile, and says so anew.
  await look('start with records that wait', { tab: false });
  await fillWithPeople(page, { people: 2, setsEach: 0, withFacts: true });
  await page.goto(`${site.url()}#/person/${PERSON}/server`);
  await heading(page, title);
  await page.getByRole('button').first().waitFor();
  await look('server of a person');
  await page.goto(`${site.url()}#/people`);
  await heading(page, 'People');
  await look('list with a server');
  expect(faults).toEqual([]);
});
