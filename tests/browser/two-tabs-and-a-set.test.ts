/** Two real tabs and a clinic's server: while a set runs in one of them, nothing is sent and nothing taken in by itself in either. */
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { fillWithPeople } from '../../scripts/bench/many-people.ts';
import { findChromium, launchChromium } from '../../scripts/chromium.ts';
import { type Site, serveSite } from '../../scripts/serve-site.ts';
import { POSE_MODELS } from '../../src/pose/model.ts';
import { delegateKey } from '../../src/run/faster-delegate.ts';
import { wentWell } from '../record/went-well.ts';
import { fhirEndpoint } from '../sync/endpoint/fhir-endpoint.ts';
import { seed } from './seeded-diary.ts';
import { fullDiary } from './two-weeks.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const CLIP = join(ROOT, 'tests/clips/taps-left-quick.mp4');
/** A set runs as fast as the model on a slow, shared machine allows. */
const SET_MS = 240_000;
/** Somebody of the therapist's list; as `fillWithPeople` names them. */
const PERSON = '00000000-0000-4000-8100-000000000001';

let browser: Browser;
let clinic: Awaited<ReturnType<typeof fhirEndpoint>>;
let site: Site;
beforeAll(async () => {
  browser = await launchChromium(wentWell(findChromium(() => undefined)));
  clinic = await fhirEndpoint({ validates: () => false });
  for (const id of ['one', 'two']) await clinic.repository.createResource({ resourceType: 'Patient', id });
  site = wentWell(await serveSite(ROOT, 0, { fhirServer: clinic.base, clientId: null, signIn: [] }));
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
  await clinic?.close();
});

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
/** Whether a set runs in any tab, as the browser's own locks say. */
const setRuns = (page: Page): Promise<boolean> =>
  page.evaluate(async () => (await navigator.locks.query()).held?.some(({ name }) => name?.startsWith('evenside-set-')) ?? false);
const documents = () => clinic.repository.all('DocumentReference').length;
const connected = (person: string, patient: string) => ({
  servers: [{ person, server: clinic.base, patient, cursor: null, sentAt: null, takenAt: null }],
  serverChoices: [{ person, server: clinic.base, automatic: true, refreshToken: null }],
});

test('what is told in one tab while a set runs in the other, and what is new of a person, wait for its end', {
  timeout: SET_MS * 1.5,
}, async () => {
  const { origin } = new URL(site.url);
  // As after a first set: the processors need not be timed.
  const localStorage = POSE_MODELS.map((model) => ({ name: delegateKey(model), value: 'CPU' }));
  const context = await browser.newContext({
    storageState: { cookies: [], origins: [{ origin, localStorage }] },
    serviceWorkers: 'block',
  });
  const faults: string[] = [];
  context.on('weberror', (error) => faults.push(error.error().message));
  const doing = await context.newPage();
  await doing.goto(site.url);
  await fillWithPeople(doing, { people: 1, setsEach: 0, withFacts: true });
  const [mine, theirs] = [connected('me', 'Patient/one'), connected(PERSON, 'Patient/two')];
  await seed(doing, {
    ...fullDiary(1),
    servers: [...mine.servers, ...theirs.servers],
    serverChoices: [...mine.serverChoices, ...theirs.serverChoices],
  });
  await doing.goto(`${site.url}#/`);
  await doing.reload();
  await expect.poll(documents, { timeout: 30_000 }).toBeGreaterThan(5);
  const telling = await context.newPage();
  await telling.goto(`${site.url}#/questions`);
  await telling.getByRole('radio', { name: 'No' }).first().waitFor();

  await doing.setInputFiles('input[type=file]', CLIP);
  await press(doing, 'Measure the video');
  await expect.poll(() => setRuns(telling), { timeout: SET_MS }).toBe(true);
  const [requests, held] = [clinic.seen.length, documents()];
  for (const question of await telling.getByRole('radio', { name: 'No' }).all()) await question.check();
  await press(telling, 'Done');
  await telling.getByRole('heading', { level: 1, name: 'Today' }).waitFor();
  await telling.goto(`${site.url}#/people`);
  await telling.getByRole('heading', { level: 1, name: 'People' }).waitFor();
  await telling.getByText('Asking the clinic’s server what is new…').waitFor();
  let looks = 0;
  for (;;) {
    // Counted before the lock is looked at: what came by then came while the set ran.
    const now = clinic.seen.length;
    if (!(await setRuns(telling))) break;
    expect(now, 'requests while a set runs').toBe(requests);
    looks += 1;
    await telling.waitForTimeout(200);
  }
  expect(looks).toBeGreaterThan(0);

  // Then all of it goes and comes: what was told in the other tab, and the set.
  await doing.waitForURL(/#\/set\//, { timeout: SET_MS });
  await expect.poll(documents, { timeout: 60_000 }).toBeGreaterThanOrEqual(held + 2);
  const asked = () => clinic.seen.slice(requests).filter(({ method, path }) => method === 'GET' && path.includes('two')).length;
  await expect.poll(asked, { timeout: 60_000 }).toBeGreaterThan(0);
  expect(faults).toEqual([]);
  await context.close();
});
