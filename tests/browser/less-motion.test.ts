import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { motionFaults } from './every-screen/motion.ts';
import { siteForTests } from './harness.ts';
import { seed, seededDiary } from './seeded-diary.ts';

const site = siteForTests();

/** How foot and head are drawn, picture by picture, for so long. */
const drawnFor = (page: Page, forMs: number) =>
  page.locator('.glide-drawing').evaluate(
    (drawing, forMs) =>
      new Promise<readonly string[]>((resolve) => {
        const seen = new Set<string>();
        const beginsAt = performance.now();
        requestAnimationFrame(function look() {
          seen.add([...drawing.querySelectorAll('g')].map((g) => g.getAttribute('transform')).join(' '));
          if (performance.now() - beginsAt < forMs) requestAnimationFrame(look);
          else resolve([...seen]);
        });
      }),
    forMs,
  );

test('the drawing of a glide steps between its two ends for who wants less motion, glides otherwise, and stands when it is paused', async () => {
  const { page } = await site.open();
  const diary = seededDiary();
  await seed(page, diary.rows);
  await page.goto(`${site.url()}#/today/go/${diary.glideItemId}/left`);
  const pause = page.getByRole('button', { name: 'Pause the drawing' });
  await pause.waitFor();
  // Less than half a round.
  expect((await drawnFor(page, 1500)).length).toBeGreaterThan(4);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  // Up to its next picture.
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  expect(await drawnFor(page, 6000)).toHaveLength(2);
  await pause.click();
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  expect(await drawnFor(page, 2000)).toHaveLength(1);
});

test('a transition, an animation and gliding scrolls are found, which no other screen has', async () => {
  const { page } = await site.open();
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.evaluate(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(
      '@keyframes turn { to { rotate: 9deg } } h1 { transition: color 0.2s } p { animation: turn 2s infinite } html { scroll-behavior: smooth }',
    );
    document.adoptedStyleSheets = [sheet];
  });
  const found = (await motionFaults(page)).join('\n');
  expect(found).toMatch(/moves: h1/);
  expect(found).toMatch(/runs: p/);
  expect(found).toMatch(/scrolls smoothly: html/);
});
