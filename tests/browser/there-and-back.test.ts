/** As its users would: a therapist's plan to a patient, the patient's set and record back to the therapist, each in a browser profile of their own. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { unpacked } from '../../src/record/plan-code.ts';
import { TAKE_ADDRESS } from '../../src/record/plan-transfer.ts';
import { wentWell } from '../record/went-well.ts';
import { siteForTests } from './harness.ts';

const site = siteForTests();

/** A set runs as fast as the model on a slow, shared machine allows. */
const SET_MS = 240_000;
const PASSPHRASE = 'ten grey herons by the weir';
/** Names are shown as they were typed: nothing in them comes to life. */
const PATIENT = 'Ina <img src=x onerror="window.cameAlive=1"> Invented';
const THERAPIST = 'Wilma <b>Beispiel</b> (invented)';
/** A therapist's notes go to nobody. */
const NOTES = 'Only for the therapist: prefers mornings.';
/** What the patient typed goes to the therapist. */
const TOLD = 'Dr Muster (invented): a <i>cold</i>, may go on';
/** All that stands in a record file without a passphrase. */
const textsOf = (file: Uint8Array): string =>
  Object.values(unzipSync(file))
    .map((part) => strFromU8(part))
    .join('\n');
/** Where pictures for a look by eye go; none usually. */
const PICTURES = process.env.EVENSIDE_PICTURES;

const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name }).waitFor();
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
async function seen(page: Page, name: string): Promise<void> {
  if (PICTURES) await page.screenshot({ path: join(PICTURES, `${name}.png`), fullPage: true });
}

test('a plan goes to the patient by link, and the set comes back in a sealed file', { timeout: SET_MS * 2 }, async () => {
  const therapist = await site.open('#/people');
  await therapist.page.getByRole('link', { name: 'Add a person' }).click();
  await therapist.page.getByLabel('Name or code').fill(PATIENT);
  await therapist.page.getByRole('textbox', { name: /notes/i }).fill(NOTES);
  await press(therapist.page, 'Keep');
  await heading(therapist.page, PATIENT);
  const id = /person\/([^/]+)/.exec(therapist.page.url())?.[1] ?? '';
  await therapist.page.goto(`${site.url()}#/person/${id}/plan`);
  await heading(therapist.page, /plan/i);
  await press(therapist.page, 'Save and give it');
  await heading(therapist.page, 'Give this plan');
  await therapist.page.getByLabel('Name of the therapist').fill(THERAPIST);
  await therapist.page.getByLabel('Put the name into the link').check();
  const link = await therapist.page.getByRole('textbox', { name: 'As a link' }).inputValue();
  const inLink = wentWell(unpacked(link.slice(link.indexOf(TAKE_ADDRESS) + TAKE_ADDRESS.length)));
  expect(inLink).toContain(JSON.stringify(THERAPIST));
  expect(inLink).not.toMatch(/Ina|prefers mornings/);
  await seen(therapist.page, '1-give');

  const patient = await site.open(link.slice(link.indexOf('#')));
  await patient.page.getByText(THERAPIST).first().waitFor();
  await seen(patient.page, '2-take');
  await press(patient.page, 'Take this plan on');
  await heading(patient.page, 'Today');
  await patient.page.goto(`${site.url()}#/questions`);
  await patient.page.getByRole('radio', { name: 'Yes' }).first().check();
  await press(patient.page, 'A clinician has seen me since');
  await patient.page.getByRole('textbox').fill(TOLD);
  await press(patient.page, 'Yes, I may go on');
  await patient.page.goto(`${site.url()}#/`);
  await patient.page.setInputFiles('input[type=file]', join(import.meta.dirname, '../clips/taps-left-quick.mp4'));
  await press(patient.page, 'Measure the video');
  await patient.page.waitForURL(/#\/set\//, { timeout: SET_MS });
  await patient.page.getByRole('table').first().waitFor();
  await seen(patient.page, '3-set');
  await patient.page.goto(`${site.url()}#/send`);
  await heading(patient.page, 'Send my record');
  await patient.page.getByLabel('Name or code in the file').fill(PATIENT);
  await patient.page.getByLabel('Passphrase', { exact: true }).fill(PASSPHRASE);
  await patient.page.getByLabel('The same once more').fill(PASSPHRASE);
  const waiting = patient.page.waitForEvent('download');
  await press(patient.page, 'Save the file');
  const download = await waiting;
  await patient.page.getByText(/In it: 1 measured set, \d+ entr/).waitFor();
  await seen(patient.page, '4-send');

  await therapist.page.goto(`${site.url()}#/person/${id}/bring`);
  const file = { name: download.suggestedFilename(), mimeType: 'application/zip', buffer: readFileSync(await download.path()) };
  await therapist.page.locator('.record-drop input').setInputFiles(file);
  await therapist.page.getByLabel('Passphrase', { exact: true }).fill(PASSPHRASE);
  await press(therapist.page, 'Open it');
  await therapist.page.getByRole('heading', { name: 'What is in it' }).waitFor();
  // The plan that was given from here is the same there: no contradiction.
  await therapist.page.getByText('New here').waitFor();
  expect(await therapist.page.getByText('something else here', { exact: false }).count()).toBe(0);
  await seen(therapist.page, '5-bring');
  await press(therapist.page, 'Take it in');
  await therapist.page.getByText('It is taken in.').waitFor();
  await therapist.page.getByRole('link', { name: 'Go to the review' }).click();
  await heading(therapist.page, 'Review');
  await therapist.page.getByRole('heading', { name: 'Every set' }).waitFor();
  await therapist.page.locator('.set-line').first().waitFor();
  expect(await therapist.page.locator('.set-line').count()).toBe(1);
  expect(await therapist.page.locator('.set-line').textContent()).toContain('Foot taps');
  await seen(therapist.page, '6-review');

  await therapist.page.goto(`${site.url()}#/person/${id}/report`);
  await therapist.page.getByText(TOLD).first().waitFor();

  // The patient takes the set back: with the next file it is gone here as well, and the review says so.
  await patient.page.goto(`${site.url()}#/`);
  await patient.page.locator('.set-line').first().click();
  await press(patient.page, 'Delete this set');
  await press(patient.page, 'Yes, delete');
  await patient.page.getByText('Your sets will be listed here', { exact: false }).waitFor();
  await patient.page.goto(`${site.url()}#/send`);
  await patient.page.getByText('Whoever has the file').click();
  const next = patient.page.waitForEvent('download');
  await press(patient.page, 'Save the file');
  const later = await next;
  const plain = readFileSync(await later.path());
  // A note that is a patient's is in the file, the therapist's own went to nobody, not even with the plan.
  const inFile = textsOf(plain);
  expect(inFile).toContain(JSON.stringify(TOLD));
  expect(inFile).not.toContain('prefers mornings');
  await therapist.page.goto(`${site.url()}#/person/${id}/bring`);
  await therapist.page
    .locator('.record-drop input')
    .setInputFiles({ name: later.suggestedFilename(), mimeType: 'application/zip', buffer: plain });
  await therapist.page.getByText('1 set that was here before was removed').waitFor();
  await seen(therapist.page, '7-bring-removed');
  await press(therapist.page, 'Take it in');
  await therapist.page.getByText('It is taken in.').waitFor();
  await therapist.page.getByRole('link', { name: 'Go to the review' }).click();
  await therapist.page.getByRole('heading', { name: 'Removed by hand' }).waitFor();
  expect(await therapist.page.locator('.set-line').count()).toBe(0);
  await seen(therapist.page, '8-review-removed');

  // The therapist's own note stands where it stood.
  await therapist.page.goto(`${site.url()}#/person/${id}`);
  await therapist.page.getByText(NOTES).waitFor();

  for (const { page, pageErrors } of [therapist, patient]) {
    expect(await page.evaluate(() => 'cameAlive' in window)).toBe(false);
    expect(pageErrors).toEqual([]);
  }
});
