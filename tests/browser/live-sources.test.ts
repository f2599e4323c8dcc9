/** A sign is there whenever a camera or a shared window is on, and none of their tracks is live once the screen is left. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { siteForTests } from './harness.ts';

const WINDOW = 'A call (invented)';
/** The model starts as fast as a slow, shared machine allows. */
const START_MS = 120_000;

/** Notes every track that the page was given. */
const watchTracks = (page: Page) =>
  page.addInitScript(() => {
    const tracks: MediaStreamTrack[] = [];
    Object.assign(window, { givenTracks: tracks });
    const { mediaDevices } = navigator;
    for (const name of ['getUserMedia', 'getDisplayMedia'] as const) {
      const ask = mediaDevices[name].bind(mediaDevices);
      mediaDevices[name] = async (wish) => {
        const stream = await ask(wish);
        tracks.push(...stream.getTracks());
        for (const track of stream.getTracks()) {
          const clone = track.clone.bind(track);
          track.clone = () => {
            const copy = clone();
            tracks.push(copy);
            return copy;
          };
        }
        return stream;
      };
    }
  });

/** How many tracks there were, and how many are live. */
const tracksOf = (page: Page) =>
  page.evaluate(() => {
    const { givenTracks } = window as unknown as { readonly givenTracks: readonly MediaStreamTrack[] };
    return { given: givenTracks.length, live: givenTracks.filter(({ readyState }) => readyState === 'live').length };
  });

async function noneIsLive(page: Page): Promise<void> {
  await expect.poll(async () => (await tracksOf(page)).live).toBe(0);
  expect((await tracksOf(page)).given).toBeGreaterThan(0);
}

describe('a camera', () => {
  const site = siteForTests({ camera: 'tests/clips/taps-left-steady.mp4' });
  const on = (page: Page) => page.getByText('Camera is on').filter({ visible: true });

  test('that a set watches in one tab is not watched by a second set in another, which says why', async () => {
    const { page, context } = await site.open('#/choose/camera');
    await page.getByRole('button', { name: 'Start the camera' }).click();
    await page.getByRole('button', { name: 'None of these' }).click();
    await page.locator('.phase-banner').waitFor();
    const other = await context.newPage();
    await other.goto(`${site.url()}#/choose/camera`);
    await other.getByRole('button', { name: 'Start the camera' }).click();
    await other.getByText('A set runs in another tab, in front of this camera.').waitFor();
    await page.close();
    // The browser lets go of what a closed page held in its own time.
    const tryAgain = other.getByRole('button', { name: 'Try again' });
    const seen = async () => {
      if (await tryAgain.isVisible()) await tryAgain.click();
      return on(other).isVisible();
    };
    await expect.poll(seen, { timeout: START_MS, interval: 500 }).toBe(true);
  });

  test('in a set has its sign, and is off once the screen is left', async () => {
    const { page } = await site.open('#/urgent');
    await watchTracks(page);
    await page.reload();
    await page.goto(`${site.url()}#/choose/camera`);
    await page.getByRole('button', { name: 'Start the camera' }).click();
    await page.getByRole('button', { name: 'None of these' }).click();
    await on(page).waitFor({ timeout: START_MS });
    expect((await tracksOf(page)).live).toBeGreaterThan(0);
    await page.goto(`${site.url()}#/urgent`);
    await noneIsLive(page);
  });

  test('at the desk has its sign, also while a picture is frozen, and is off once the screen is left', async () => {
    const { page } = await site.open('#/urgent');
    await watchTracks(page);
    await page.reload();
    await page.goto(`${site.url()}#/desk`);
    await page.getByRole('radio', { name: /camera/i }).check();
    await page.getByRole('button', { name: 'Start measuring' }).click();
    await on(page).waitFor({ timeout: START_MS });
    await page.locator('.phase-banner:not([data-stage="opening"])').waitFor({ timeout: START_MS });
    await page.getByRole('button', { name: /freeze/i }).click();
    await page.getByText('This picture stands still. The recording goes on.').waitFor();
    await on(page).waitFor();
    expect((await tracksOf(page)).live).toBeGreaterThan(0);
    await page.goto(`${site.url()}#/urgent`);
    await noneIsLive(page);
  });
});

describe('a shared window', () => {
  const site = siteForTests({ args: [`--auto-select-tab-capture-source-by-title=${WINDOW}`] });

  test('has its sign from being chosen on, whatever else is chosen then, and is let go once the screen is left', async () => {
    const { page, context } = await site.open('#/urgent');
    const call = await context.newPage();
    await call.setContent(`<title>${WINDOW}</title><p></p>`);
    await call.evaluate(() => {
      setInterval(() => document.querySelector('p')?.replaceChildren(String(performance.now())), 30);
    });
    await page.bringToFront();
    await watchTracks(page);
    await page.reload();
    await page.goto(`${site.url()}#/desk`);
    const sign = page.getByText('A window is shared');
    expect(await sign.count()).toBe(0);
    await page.getByRole('button', { name: 'Choose the window' }).click();
    await sign.waitFor({ timeout: START_MS });
    await page.getByRole('radio', { name: /camera/i }).check();
    await sign.waitFor();
    expect((await tracksOf(page)).live).toBeGreaterThan(0);
    await page.getByRole('link', { name: 'Back' }).click();
    await noneIsLive(page);
  });
});
