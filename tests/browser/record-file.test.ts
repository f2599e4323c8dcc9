/** A record on its way: saved on the patient's machine, taken in on the therapist's, with nothing in between but the file. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { entryNow } from '../../src/screens/day/entry-now.ts';
import { ALL_NO } from '../screens/diary-builder.ts';
import { siteForTests } from './harness.ts';
import { tabTo } from './keyboard.ts';
import { seed, seededDiary } from './seeded-diary.ts';

const site = siteForTests();

const PASSPHRASE = 'ten grey herons by the weir';

const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name }).waitFor();
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();

/** Some days that are somebody's own, the last with a warning sign. */
function ownDays() {
  const { rows, ...rest } = seededDiary();
  const warned = { ...entryNow(), kind: 'red-flags', answers: { ...ALL_NO, 'saddle-numbness': 'yes' } };
  const diary = [...(rows.diary ?? []).map((entry) => ({ ...(entry as object), origin: 'own' })), warned];
  return { ...rest, rows: { ...rows, diary } };
}

async function saved(page: Page, seal: 'sealed' | 'plain'): Promise<{ readonly name: string; readonly bytes: Buffer }> {
  await page.goto(`${site.url()}#/report`);
  await page.getByRole('link', { name: 'Send my record' }).click();
  await heading(page, 'Send my record');
  await page.getByLabel('Name or code in the file').fill('Ina Invented');
  if (seal === 'sealed') {
    await page.getByLabel('Passphrase', { exact: true }).fill(PASSPHRASE);
    await page.getByLabel('The same once more').fill(PASSPHRASE);
  } else await page.getByText('Whoever has the file').click();
  const waiting = page.waitForEvent('download');
  await press(page, 'Save the file');
  const download = await waiting;
  await page.getByText('In it: 7 measured sets, 13 entries.').waitFor();
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

const choose = (page: Page, name: string, bytes: Buffer | string, mimeType = 'application/zip') =>
  page.locator('.record-drop input').setInputFiles({ name, mimeType, buffer: Buffer.from(bytes) });

/** How many rows each table has. */
const rowCounts = (page: Page): Promise<Readonly<Record<string, number>>> =>
  page.evaluate(async () => {
    const answer = <T>(request: IDBRequest<T>) =>
      new Promise<T>((done, failed) => {
        request.onsuccess = () => done(request.result);
        request.onerror = () => failed(request.error);
      });
    const db = await answer(indexedDB.open('evenside'));
    const counts: Record<string, number> = {};
    for (const name of db.objectStoreNames) {
      if (name !== 'facts') counts[name] = await answer(db.transaction(name).objectStore(name).count());
    }
    db.close();
    return counts;
  });

async function patientsFile(seal: 'sealed' | 'plain') {
  const { page } = await site.open();
  await seed(page, ownDays().rows);
  return { ...(await saved(page, seal)), page };
}

test('a sealed record is taken in for a new person, who needs the therapist now; again it changes nothing', async () => {
  const { name, bytes } = await patientsFile('sealed');
  expect(name).toMatch(/^evenside-record-\d{4}-\d\d-\d\d\.zip$/);
  expect(bytes.includes('Ina Invented')).toBe(false);
  expect(bytes.includes('foot-tap')).toBe(false);

  const { page, pageErrors } = await site.open('#/people');
  await page.getByRole('link', { name: 'Take in a record' }).click();
  await heading(page, 'Take in a record');
  await choose(page, name, bytes);
  await page.getByText('This record is sealed.').waitFor();
  await page.getByLabel('Passphrase', { exact: true }).fill('nine green frogs on a stone');
  await press(page, 'Open it');
  await page.getByText('This passphrase does not open the record.').waitFor();
  await page.getByLabel('Passphrase', { exact: true }).fill(PASSPHRASE);
  await press(page, 'Open it');
  await page.getByRole('heading', { name: 'What is in it' }).waitFor();
  await page.getByText('7 sets, 13 entries', { exact: true }).waitFor();
  expect((await rowCounts(page)).sets).toBe(0);
  expect(await page.getByLabel('Name or code').inputValue()).toBe('Ina Invented');
  await press(page, 'Take it in');
  await page.getByText('It is taken in.').waitFor();
  await page.getByRole('link', { name: 'Go to the review' }).click();
  await heading(page, 'Review');
  await page.getByText('Every set').waitFor();
  await page.goto(`${site.url()}#/people`);
  await page.getByText('Red flag: needs urgent care now').waitFor();

  const before = await rowCounts(page);
  expect(before).toMatchObject({ people: 1, sets: 7, results: 7, diary: 13, recordIds: 1 });
  await page.goto(`${site.url()}#/people/bring`);
  await choose(page, name, bytes);
  await page.getByLabel('Passphrase', { exact: true }).fill(PASSPHRASE);
  await press(page, 'Open it');
  await page.getByText('A record of this person was taken in before, for Ina Invented.').waitFor();
  expect(await page.getByLabel('Person').locator('option:checked').textContent()).toBe('Ina Invented');
  await page.getByText('Nothing: all of it is here already').waitFor();
  await press(page, 'Take it in');
  await page.getByText('It is taken in.').waitFor();
  expect(await rowCounts(page)).toEqual(before);
  expect(pageErrors).toEqual([]);
});

test('one’s own record moves to another machine; there, for somebody in the list, it is refused', async () => {
  const { name, bytes } = await patientsFile('plain');
  const { page, pageErrors } = await site.open('#/take');
  await page.getByRole('link', { name: 'Move to another machine' }).click();
  await heading(page, 'Move to another machine');
  await choose(page, name, bytes);
  await page.getByText('Ina Invented').waitFor();
  await tabTo(page, 'button', 'Take it in');
  await page.keyboard.press('Enter');
  await page.getByText('It is taken in.').waitFor();
  await page.getByRole('link', { name: 'Go to today' }).click();
  await page.getByText('No exercises now: get help at once').waitFor();
  const before = await rowCounts(page);

  await page.goto(`${site.url()}#/people/bring`);
  await choose(page, name, bytes);
  await page
    .getByText('20 parts of this record stand here already with somebody else: your own record on this machine.')
    .waitFor();
  expect(await page.getByRole('button', { name: 'Take it in' }).isDisabled()).toBe(true);
  expect(await rowCounts(page)).toEqual(before);
  expect(pageErrors).toEqual([]);
});

test('what is no record is named in a sentence and nothing is kept; a plan leads to its own screen', async () => {
  const { name, bytes, page: patient } = await patientsFile('plain');
  const { page, pageErrors } = await site.open('#/people/bring');
  await choose(page, 'letter.zip', 'Dear colleague');
  await page.getByText('This is not a record from Evenside.').waitFor();
  await choose(page, name, bytes.subarray(0, bytes.length / 2));
  await page.getByText('This record was damaged on its way').waitFor();
  const rows = Object.values(await rowCounts(page));
  expect(rows.reduce((sum, n) => sum + n, 0)).toBe(0);

  await patient.goto(`${site.url()}#/plan/give`);
  const waiting = patient.waitForEvent('download');
  await press(patient, 'Save the file');
  const plan = await waiting;
  await choose(page, plan.suggestedFilename(), readFileSync(await plan.path()), 'application/json');
  await page.getByText('This file is a plan, not a record.').waitFor();
  await page.getByRole('link', { name: 'Open the plan' }).click();
  await heading(page, 'A plan for you');
  await page.getByRole('button', { name: 'Take this plan on' }).waitFor();
  expect(pageErrors).toEqual([]);
});
