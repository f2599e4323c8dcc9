/** The review of a full diary: the answer in the first screenful, a long list that scrolls, and what comes out of the printer. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { siteForTests } from './harness.ts';
import { pageFaults } from './page-faults.ts';
import { seed } from './seeded-diary.ts';
import { fullDiary } from './two-weeks.ts';

const site = siteForTests();

/** Four lines on two legs on each of the 13 days before today that two weeks show. */
const SETS = 13 * 4 * 2;

async function openReview(language: 'en' | 'es' = 'en', days = 14): Promise<Page> {
  const { page } = await site.open();
  if (language === 'es') await page.getByRole('button', { name: 'Español' }).click();
  await page.setViewportSize({ width: 1280, height: 800 });
  await seed(page, fullDiary(days));
  await page.goto(`${site.url()}#/review`);
  await page.locator('.set-lines').waitFor();
  return page;
}

test('symptoms, the days after and the first legs stand in the first screenful of a laptop', async () => {
  const page = await openReview();
  for (const shown of [
    page.getByText('Strongest symptoms of a day'),
    page.getByText(/^\d+ of \d+ settled$/),
    page.getByRole('row', { name: /^Foot taps, left/ }).first(),
    page.getByRole('row', { name: /^Foot taps, right/ }).first(),
  ]) {
    const box = await shown.boundingBox();
    expect((box?.y ?? Number.POSITIVE_INFINITY) + (box?.height ?? 0)).toBeLessThanOrEqual(800);
  }
});

test('of more than a hundred sets only those in sight are drawn; each is reached by scrolling and leads to its page and back', async () => {
  const page = await openReview();
  const list = page.locator('.review-sets');
  await list.scrollIntoViewIfNeeded();
  expect(await list.getByRole('link').count()).toBeLessThan(SETS / 2);
  expect(await list.locator('li').first().getAttribute('aria-setsize')).toBe(String(SETS));
  await page.evaluate(() => window.scrollTo(0, document.documentElement.scrollHeight));
  await list.locator(`li[aria-posinset="${SETS}"] a`).click();
  await page.getByRole('heading', { level: 2, name: 'Every repetition' }).waitFor();
  await page.goBack();
  await page.getByRole('heading', { level: 1, name: 'Review' }).waitFor();
});

// A picture of a page holds no more than 16,384 px of its height: fewer days, and on a phone what folds stays folded. `every-screen` unfolds it there.
test.each([
  ['en', ['2 weeks', 'All'], 'Loading'],
  ['es', ['2 semanas', 'Todo'], 'Cargando'],
] as const)('many sets have no fault that axe knows and fit both sizes: %s', async (language, periods, loading) => {
  const page = await openReview(language, 2);
  const faults: string[] = [];
  for (const name of periods) {
    await page.getByRole('radio', { name }).check();
    await page.locator('.review-parts[aria-busy="false"]').waitFor();
    await page.getByText(loading, { exact: true }).waitFor({ state: 'detached' });
    for (const viewport of [
      { width: 1280, height: 800 },
      { width: 390, height: 844 },
    ]) {
      await page.setViewportSize(viewport);
      await page.evaluate((open) => {
        for (const folded of document.querySelectorAll('details')) folded.open = open;
        return new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
      }, viewport.width > 1000);
      expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThan(16_384);
      faults.push(...(await pageFaults(page)).map((fault) => `${name}, ${viewport.width}: ${fault}`));
    }
  }
  expect(faults).toEqual([]);
});

test('printed are all sets and every chart, black on white from a dark screen, and nothing to press', async () => {
  const page = await openReview();
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  expect(await page.locator('.set-lines > li').count()).toBe(SETS);
  expect(await page.locator('button:visible, input:visible, summary:visible').count()).toBe(0);
  // Four lines on two legs, each a strip and a chart; symptoms and their place.
  expect(await page.getByRole('img').count()).toBe(18);
  expect(
    await page
      .locator('.mark')
      .first()
      .evaluate((mark) => getComputedStyle(mark).fill),
  ).toBe('rgb(0, 0, 0)');
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
  await page.locator('.review-sets').waitFor();
});
