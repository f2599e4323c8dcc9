/** The report as it comes out of the printer, and the files as they come into the folder of downloads. */
import { readFile } from 'node:fs/promises';
import Papa from 'papaparse';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { DEFAULT_NAMING } from '../../src/fhir/naming.ts';
import { recordsOf } from '../../src/fhir/records-of.ts';
import { siteForTests } from './harness.ts';
import { pagesOf } from './pdf-pages.ts';
import { seed } from './seeded-diary.ts';
import { fullDiary } from './two-weeks.ts';

const site = siteForTests();

async function openReport(language: 'en' | 'es' = 'en', plan = {}): Promise<Page> {
  const { page } = await site.open();
  if (language === 'es') await page.getByRole('button', { name: 'Español' }).click();
  await seed(page, fullDiary(14, plan));
  await page.goto(`${site.url()}#/report`);
  await page.getByRole('heading', { level: 2, name: language === 'es' ? 'Lo prescrito' : 'Prescribed' }).waitFor();
  return page;
}

test.each([
  ['en', 'one line for both', {}, 2],
  ['es', 'one line for both', {}, 2],
  // Eight lines, and a step of each of them.
  ['en', 'a line for each', { parted: true }, 3],
  ['es', 'a line for each', { parted: true }, 3],
] as const)(
  'two weeks of four exercises on both legs, measured and told of every day, fit the pages they may take, A4 or Letter: %s, %s',
  async (language, _, plan, most) => {
    const page = await openReport(language, plan);
    for (const width of [1280, 390]) {
      await page.setViewportSize({ width, height: 800 });
      await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
      for (const format of ['A4', 'Letter']) {
        const pages = pagesOf(await page.pdf({ format }));
        expect(pages, `${format}, from a window of ${width} px`).toBeGreaterThan(0);
        expect(pages, `${format}, from a window of ${width} px`).toBeLessThanOrEqual(most);
      }
    }
  },
);

test('the counting of pages counts pages', async () => {
  const { page } = await site.open();
  await page.evaluate(() => {
    const sheets = ['1', '2', '3'].map((text) => Object.assign(document.createElement('p'), { textContent: text }));
    for (const sheet of sheets) sheet.style.breakAfter = 'page';
    document.body.replaceChildren(...sheets);
  });
  expect(pagesOf(await page.pdf({ format: 'A4' }))).toBeGreaterThanOrEqual(3);
});

test('printed are the report and its mark as invented, not the buttons; black on white from a dark screen, too', async () => {
  const page = await openReport();
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  await page.getByText('This is no record of a person.').waitFor();
  await page.getByText('does not replace clinical examination').waitFor();
  expect(await page.locator('button:visible, a:visible, input:visible').count()).toBe(0);
  const colours = await page
    .locator('.report')
    .evaluate((report) => [getComputedStyle(report).color, getComputedStyle(report).backgroundColor]);
  expect(colours).toEqual(['rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
});

test('each file is saved whole, and says of each set that it is invented', async () => {
  const page = await openReport();
  const saved = async (button: string) => {
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: button }).click()]);
    return { name: download.suggestedFilename(), text: await readFile(await download.path(), 'utf8') };
  };
  const table = (text: string) => Papa.parse<Record<string, string>>(text, { header: true }).data;
  const sets = await saved('Sets as CSV');
  expect(sets.name).toMatch(/^evenside-sets-\d{4}-\d{2}-\d{2}\.csv$/);
  expect(table(sets.text)).toHaveLength(14 * 4 * 2);
  expect(new Set(table(sets.text).map(({ origin }) => origin))).toEqual(new Set(['example']));
  const reps = await saved('Repetitions as CSV');
  expect(table(reps.text)).toHaveLength(14 * 4 * 2 * 5);
  const everything = JSON.parse((await saved('Everything as JSON')).text);
  expect([everything.evenside, everything.version, everything.damaged]).toEqual(['export', 1, []]);
  expect([everything.sets.length, everything.diary.length]).toEqual([112, fullDiary(14).diary.length]);
  const fhir = await saved('Save 2 weeks as FHIR');
  expect(fhir.name).toMatch(/^evenside-fhir-\d{4}-\d{2}-\d{2}\.json$/);
  const own = fullDiary(14).diary.filter(({ origin, kind }) => origin === 'own' && kind !== 'dose-step');
  const { sets: ownSets, diary, refused } = recordsOf(JSON.parse(fhir.text), DEFAULT_NAMING);
  // Those of the last two weeks; what is invented, and the clearance with its typed note, are not in it.
  expect([ownSets, refused]).toEqual([[], []]);
  expect(diary.length).toBeGreaterThan(14 * 3);
  expect(diary.length).toBeLessThanOrEqual(own.length + 4);
});
