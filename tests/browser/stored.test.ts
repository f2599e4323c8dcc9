/** What is stored here: how much, saved as a file, and deleted for good. */
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { fillWithPeople } from '../../scripts/bench/many-people.ts';
import { readRecord } from '../../src/record/file/read-record.ts';
import { siteForTests } from './harness.ts';
import { seed, seededDiary } from './seeded-diary.ts';

const site = siteForTests({ keepsSite: true });

const PASSPHRASE = 'ten grey herons by the weir';
/** All is fetched as fast as a slow, shared machine allows. */
const SLOW_MS = 120_000;

const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name }).waitFor();
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();

/** Everything that a page of this address can keep in the browser. */
const keptHere = (page: Page) =>
  page.evaluate(async () => {
    const files: string[] = [];
    for await (const name of (await navigator.storage.getDirectory()).keys()) files.push(name);
    return {
      databases: (await indexedDB.databases()).map(({ name }) => name),
      caches: await caches.keys(),
      local: Object.keys(localStorage),
      session: Object.keys(sessionStorage),
      workers: (await navigator.serviceWorker.getRegistrations()).length,
      cookies: document.cookie,
      files,
    };
  });
const NOTHING = { databases: [], caches: [], local: [], session: [], workers: 0, cookies: '', files: [] };

/** Some days, people, choices, and the whole site. */
async function filled() {
  const visit = await site.open();
  const { page } = visit;
  await page.getByText('Ready to work without a network').waitFor({ timeout: SLOW_MS });
  await seed(page, seededDiary().rows);
  await fillWithPeople(page, { people: 3, setsEach: 1, withFacts: true });
  await page.evaluate(() => sessionStorage.setItem('evenside.invented', 'yes'));
  await press(page, 'Español');
  await press(page, 'English');
  await page.goto(`${site.url()}#/stored`);
  await page.reload();
  await heading(page, 'What is stored here');
  const kept = await keptHere(page);
  expect(kept.databases).toEqual(['evenside']);
  expect(kept.caches.length).toBe(2);
  expect(kept.workers).toBe(1);
  expect(kept.local).toContain('evenside.choices');
  expect(kept.session).toEqual(['evenside.invented']);
  return visit;
}

async function eraseAll(page: Page): Promise<void> {
  await page.getByLabel(/type ERASE/).fill('erase');
  await press(page, 'Erase everything');
  await heading(page, 'Everything is deleted');
}

test('sizes are told by kind, and everything of one’s own is saved as one file', async () => {
  const { page } = await filled();
  // The table is drawn once everything has been looked at.
  const count = (name: RegExp) => page.getByRole('row', { name }).getByRole('cell').first().textContent();
  const { rows } = seededDiary();
  expect(Number(await count(/^Diary entries/))).toBe(rows.diary?.length);
  expect(Number(await count(/^Measured sets/))).toBe((rows.sets?.length ?? 0) + 3);
  expect(Number(await count(/^People/))).toBe(3);
  await page.getByRole('row', { name: /^Model that sees the leg: Normal 9\.4 MB$/ }).waitFor();
  // Most of it is the pose model's WebAssembly.
  await page.getByRole('row', { name: /^The program itself 1[2-9] MB$/ }).waitFor();
  await page.getByRole('link', { name: 'Save everything as a file' }).click();
  await heading(page, 'Send my record');
  await page.getByRole('radio', { name: /^Whoever has the file/ }).check();
  const download = page.waitForEvent('download');
  await press(page, 'Save the file');
  const saved = await readRecord(new Uint8Array(await readFile(await (await download).path())), null, crypto);
  expect(saved.ok && saved.value.setIds).toHaveLength(rows.sets?.length ?? 0);
  // The invented plan is nobody's.
  expect(saved.ok && saved.value.diary).toHaveLength((rows.diary?.length ?? 0) - 1);
});

test('deleting everything asks twice, and leaves nothing in database, caches, storage or service worker', async () => {
  const { page, pageErrors } = await filled();
  await press(page, 'Delete everything …');
  await page.getByText('all measured sets and the whole diary: plans, symptoms, answers').waitFor();
  expect(await page.getByRole('button', { name: 'Erase everything' }).isDisabled()).toBe(true);
  await press(page, 'Do not delete anything');
  await press(page, 'Delete everything …');
  await eraseAll(page);
  expect(await keptHere(page)).toEqual(NOTHING);
  await press(page, 'Start again');
  await heading(page, /^Your leg exercises/);
  await page.getByText('Your sets will be listed here.').waitFor();
  expect(pageErrors).toEqual([]);
});

test('nothing is deleted while another tab is open, and one sentence says so', async () => {
  const { page, context } = await filled();
  const other = await context.newPage();
  await other.goto(site.url());
  await heading(other, /^Your leg exercises/);
  await press(page, 'Delete everything …');
  await page.getByLabel(/type ERASE/).fill('erase');
  await press(page, 'Erase everything');
  await page.getByText(/tab/).first().waitFor();
  expect((await keptHere(page)).databases).toEqual(['evenside']);
  await other.close();
  await press(page, 'Erase everything');
  await heading(page, 'Everything is deleted');
  await expect.poll(() => keptHere(page)).toEqual(NOTHING);
});

test.each(['open', 'forgotten'])('deleting everything leaves nothing with the passphrase lock on, %s', async (lock) => {
  const { page, context } = await filled();
  await page.goto(`${site.url()}#/lock`);
  await page.getByLabel('Passphrase', { exact: true }).fill(PASSPHRASE);
  await page.getByLabel('The same once more').fill(PASSPHRASE);
  await press(page, 'Turn the lock on');
  await page.getByText('The lock is on.').waitFor();
  if (lock === 'open') {
    await page.goto(`${site.url()}#/stored`);
    await press(page, 'Delete everything …');
  } else {
    await press(page, 'Lock now');
    await heading(page, 'Evenside is locked');
    await press(page, 'I forgot it');
  }
  // What is said afterwards needs no network either, though nothing is left to take it from.
  await context.setOffline(true);
  await eraseAll(page);
  await expect.poll(() => keptHere(page)).toEqual(NOTHING);
});
