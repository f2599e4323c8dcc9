/** A set whose every write fails, in a real browser: its screen says so while it runs and once aloud, and at the end it is kept as a file. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { siteForTests } from './harness.ts';
import { saidAloud, writeDownVoice } from './heard-voice.ts';
import { pageFaults } from './page-faults.ts';

/** A set runs as fast as the model on a slow, shared machine allows. */
const SET_MS = 240_000;
const site = siteForTests({ camera: 'tests/clips/taps-left-steady.mp4' });

const FULL = 'No room to store this set. Go on, and save it as a file at the end.';
const countOf = async (page: Page) => Number(await page.locator('.count-number').textContent());

test('a disk without room is told of from the first repetition to the last, once aloud, and the set is saved as a file', {
  timeout: SET_MS,
}, async () => {
  const { page, context, pageErrors } = await site.open('#/choose/camera');
  await writeDownVoice(context);
  await page.reload();
  await page.getByRole('button', { name: 'Start the camera' }).click();
  await page.getByRole('button', { name: 'None of these' }).click();
  await page.locator('.phase-banner').waitFor();
  // The answers before the set are stored, the set has not begun to count. A smaller quota would do nothing yet: Chromium remembers for half a minute how much room there was.
  await page.evaluate(() => {
    const full = () => {
      throw new DOMException('The quota is used up.', 'QuotaExceededError');
    };
    for (const call of ['put', 'add'] as const) IDBObjectStore.prototype[call] = full;
  });
  const line = page.locator('.set-trouble').getByText(FULL);
  await line.waitFor({ timeout: SET_MS });
  for (const count of [1, 2, 3]) {
    await expect.poll(() => countOf(page), { timeout: SET_MS }).toBeGreaterThanOrEqual(count);
    expect(await line.isVisible()).toBe(true);
  }
  expect(await pageFaults(page)).toEqual([]);
  if (process.env.EVENSIDE_SHOTS) {
    await page.screenshot({ path: `${process.env.EVENSIDE_SHOTS}/ns-laptop.png` });
    await page.setViewportSize({ width: 390, height: 844 });
    await page.screenshot({ path: `${process.env.EVENSIDE_SHOTS}/ns-phone.png` });
  }
  expect((await saidAloud(page)).filter((text) => text === FULL)).toHaveLength(1);
  await page.getByRole('button', { name: /^Stop/ }).click();
  await page.getByText('The set was measured, but could not be stored: only this page has it.').waitFor({ timeout: SET_MS });
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: /file/ }).click();
  await download;
  expect(pageErrors).toEqual([]);
});
