/** A therapist's people: five hundred with two hundred thousand sets, and one of them with a record. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { fillWithPeople } from '../../scripts/bench/many-people.ts';
import { siteForTests } from './harness.ts';
import { pageFaults } from './page-faults.ts';
import { seed, seededDiary } from './seeded-diary.ts';

const site = siteForTests();

/** From the next page on, the names of the tables that are read are gathered in `window.tablesRead`. */
const watchReads = (page: Page) =>
  page.addInitScript(() => {
    const read = new Set<string>();
    Object.assign(window, { tablesRead: read });
    for (const method of ['get', 'getAll', 'openCursor', 'getAllKeys', 'getKey', 'openKeyCursor', 'count'] as const) {
      for (const holder of [IDBObjectStore.prototype, IDBIndex.prototype]) {
        const original = holder[method] as (...args: unknown[]) => unknown;
        Object.assign(holder, {
          [method](this: IDBObjectStore | IDBIndex, ...args: unknown[]) {
            read.add('objectStore' in this ? `${this.objectStore.name}.${this.name}` : this.name);
            return original.apply(this, args);
          },
        });
      }
    }
  });
const tablesRead = (page: Page) => page.evaluate(() => [...(window as unknown as { tablesRead: Set<string> }).tablesRead].sort());
const names = (page: Page) => page.locator('.person-row strong').allTextContents();

describe('five hundred people with two hundred thousand sets', () => {
  test('are listed without reading one set, a few lines at a time, whoever is in need first; each of them is found', async () => {
    const { page } = await site.open('#/people');
    await fillWithPeople(page, { people: 500, setsEach: 400, withFacts: true });
    await watchReads(page);
    await page.reload();
    await page.getByText('500 people, 250 need you').waitFor();
    // Whether the store is locked is asked first; of the sets only, of an index by their state, whether one was left running.
    expect(await tablesRead(page)).toEqual(['facts', 'lock', 'people', 'sets.state']);
    expect((await names(page)).slice(0, 3)).toEqual(['Invented 0', 'Invented 10', 'Invented 20']);
    const drawn = () => page.locator('.person-row').count();
    expect(await drawn()).toBeLessThan(40);
    await page.evaluate(() => window.scrollTo(0, document.body.scrollHeight));
    await page.getByText('Invented 499', { exact: true }).waitFor();
    expect(await drawn()).toBeLessThan(40);
    await page.evaluate(() => window.scrollTo(0, 0));
    await page.getByLabel('Find by name').fill('invented 37');
    await page.getByText('Invented 370', { exact: true }).waitFor();
    // Those in need by their urgency, then the others by name.
    expect((await names(page)).slice(0, 6)).toEqual([370, 371, 372, 373, 374, 37].map((n) => `Invented ${n}`));
    await page.getByText('Invented 371', { exact: true }).click();
    await page.getByRole('heading', { level: 1, name: 'Invented 371' }).waitFor();
    await page.getByRole('link', { name: 'Back' }).click();
    expect(await page.getByLabel('Find by name').inputValue()).toBe('invented 37');
    expect(await pageFaults(page)).toEqual([]);
  });
});

describe('one person', () => {
  test('is added, given a plan and a record of their own, and removed with all of it; one’s own record knows nothing of it', async () => {
    const { page } = await site.open('#/people');
    await page.getByRole('link', { name: 'Add a person' }).click();
    await page.getByLabel('Name or code').fill('Ina <b>Invented</b>');
    await page.getByText('right leg', { exact: true }).click();
    await page.getByRole('button', { name: 'Keep' }).click();
    await page.getByRole('heading', { level: 1, name: 'Ina <b>Invented</b>' }).waitFor();
    const id = /person\/([^/]+)/.exec(page.url())?.[1] ?? '';
    const { rows, leftId } = seededDiary();
    await seed(page, rows, id);
    await page.getByRole('link', { name: /^Report/ }).click();
    await page.getByRole('heading', { level: 1, name: 'Report for the therapist' }).waitFor();
    await page.getByText('Record of Ina <b>Invented</b>').waitFor();
    await page.getByText('Name: Ina <b>Invented</b>, right leg').waitFor();
    await page.getByRole('link', { name: 'Back' }).click();
    await page.getByRole('link', { name: /^Review/ }).click();
    await page.getByRole('heading', { level: 1, name: 'Review' }).waitFor();
    await page.emulateMedia({ media: 'print' });
    await page.getByText('Record of Ina <b>Invented</b>').waitFor();
    expect(await page.getByRole('link', { name: 'Back' }).isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });
    await page.goto(`${site.url()}#/set/${leftId}`);
    await page.getByText('This set is not stored here.').waitFor();
    await page.goto(`${site.url()}#/progress`);
    await page.getByRole('heading', { level: 1, name: 'How it is going' }).waitFor();
    await page.getByText('Loading', { exact: true }).waitFor({ state: 'detached' });
    expect(await page.getByText('Foot taps, left leg').count()).toBe(0);
    await page.goto(`${site.url()}#/people`);
    await page.getByText('Foot taps, Straight leg raises, Nerve glides, Heel stands').waitFor();
    await page.getByRole('link', { name: /Ina/ }).click();
    await page.getByRole('button', { name: 'Remove this person' }).click();
    await page.getByRole('button', { name: 'Yes, remove all of it' }).click();
    await page.getByText('Nobody is here yet').waitFor();
    const left = await page.evaluate(async () => {
      const db = await new Promise<IDBDatabase>((done) => {
        const opening = indexedDB.open('evenside');
        opening.onsuccess = () => done(opening.result);
      });
      const tables = ['people', 'facts', 'sets', 'results', 'reps', 'edits', 'diary'];
      const reading = db.transaction(tables);
      const counts = await Promise.all(
        tables.map(
          (table) =>
            new Promise<number>((done) => {
              const counting = reading.objectStore(table).count();
              counting.onsuccess = () => done(counting.result);
            }),
        ),
      );
      db.close();
      return counts;
    });
    expect(left).toEqual([0, 0, 0, 0, 0, 0, 0]);
  });
});
