/** A browser that keeps nothing, one without room, and one whose database a newer program has taken over: each in a sentence, with nothing lost. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { DATABASE_NAME } from '../../src/record/database.ts';
import { siteForTests } from './harness.ts';

const site = siteForTests();

const NOTHING_KEPT = 'This browser window keeps nothing: all is gone when you close it.';
const addPerson = async (page: Page, name: string) => {
  await page.goto(`${site.url()}#/people/new`);
  await page.getByLabel('Name or code').fill(name);
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
};

test('where the browser has no place for anything, all works for this visit, every screen says so, and all is saved as a file', async () => {
  const { page, context, pageErrors } = await site.open();
  await context.addInitScript(() => {
    const refuse = () => {
      throw new DOMException('The operation is insecure.', 'SecurityError');
    };
    Object.defineProperty(window, 'indexedDB', { get: () => ({ open: refuse, databases: refuse }) });
    Object.defineProperty(window, 'localStorage', { get: refuse });
    Object.defineProperty(window, 'sessionStorage', { get: refuse });
    Object.defineProperty(Navigator.prototype, 'storage', { get: () => undefined });
    Object.defineProperty(window, 'caches', { get: () => undefined });
  });
  await page.reload();
  await page.getByText(NOTHING_KEPT).waitFor();
  await page.getByText(/^Your sets will be listed here/).waitFor();
  await addPerson(page, 'Ines Ejemplo (invented)');
  await page.getByRole('heading', { level: 1, name: 'Ines Ejemplo (invented)' }).waitFor();
  await page.getByRole('link', { name: 'Save as a file first' }).click();
  await page.getByRole('link', { name: 'Save everything as a file' }).click();
  await page.getByRole('radio', { name: /^Whoever has the file/ }).check();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the file' }).click();
  await download;
  expect(pageErrors).toEqual([]);
});

test('without room one sentence says so, what was typed stays, and it is stored once there is room', async () => {
  const { page, context } = await site.open();
  const devtools = await context.newCDPSession(page);
  const { origin } = new URL(site.url());
  await page.goto(`${site.url()}#/people/new`);
  await page.getByLabel('Name or code').fill('Ana Muster (invented)');
  await page.getByLabel('Notes').fill('n'.repeat(2000));
  await devtools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  await page.getByText('There is no room left to store anything.').waitFor();
  expect(await page.getByLabel('Name or code').inputValue()).toBe('Ana Muster (invented)');
  await devtools.send('Storage.overrideQuotaForOrigin', { origin });
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  await page.getByRole('heading', { level: 1, name: 'Ana Muster (invented)' }).waitFor();
});

test('a tab of before makes way for a newer program and says so; its database is not opened by the older one', async () => {
  const { page } = await site.open();
  await page.getByText(/^Your sets will be listed here/).waitFor();
  // As a newer program would, in another tab.
  await page.evaluate(
    (name) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open(name, 9990);
        opening.onblocked = () => reject(new Error('the older tab did not let go'));
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          opening.result.close();
          resolve();
        };
      }),
    DATABASE_NAME,
  );
  await addPerson(page, 'Ana Muster (invented)');
  await page.getByText('A newer Evenside wrote the stored sets.').waitFor();
  await page.goto(site.url());
  await page.reload();
  await page.getByText('A newer Evenside wrote the stored sets.').waitFor();
});
