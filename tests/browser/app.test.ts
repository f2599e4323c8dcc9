/** The app as people use it, in Chromium: the example, a bad file, and a set in front of the (fake) camera that is still there after a reload. */
import { join } from 'node:path';
import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { POSE_MODELS } from '../../src/pose/model.ts';
import { delegateKey } from '../../src/run/faster-delegate.ts';
import { siteForTests } from './harness.ts';

/** A set runs as fast as the model on a slow, shared machine allows. */
const SET_MS = 240_000;

/** What axe-core finds wrong with the page as it stands. */
async function findings(page: Page): Promise<readonly string[]> {
  // Evaluated by the driver: the page's own policy lets no script in.
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const here = globalThis as unknown as { axe: { run: () => Promise<{ violations: { id: string; help: string }[] }> } };
    return (await here.axe.run()).violations.map(({ id, help }) => `${id}: ${help}`);
  });
}

describe('without a camera', () => {
  const site = siteForTests();

  test('the recorded example is counted by the real model and its result is shown and kept', async () => {
    const { page, pageErrors } = await site.open();
    await page.getByRole('heading', { level: 1 }).waitFor();
    expect(await findings(page)).toEqual([]);
    await page.getByRole('button', { name: 'See it on a recorded example' }).click();
    await page.waitForURL(/#\/set\//, { timeout: SET_MS });
    await page.getByRole('heading', { level: 1 }).waitFor();
    await page.getByText('5 of 5').first().waitFor();
    expect(await findings(page)).toEqual([]);
    await page.reload();
    // The dose too is on the disk.
    await page.getByText('5 of 5').first().waitFor();
    await page.getByRole('table').first().waitFor();
    expect(await page.getByRole('table').first().getByRole('row').count()).toBeGreaterThanOrEqual(5);
    expect(pageErrors).toEqual([]);
  });

  test('a text file named like a video is refused in words, and nothing is stored', async () => {
    const { page } = await site.open();
    await page.setInputFiles('input[type=file]', {
      name: 'holiday.mp4',
      mimeType: 'video/mp4',
      buffer: Buffer.from('this is no video'),
    });
    await page.getByRole('button', { name: 'Measure the video' }).click();
    await page.getByRole('button', { name: 'Try again' }).waitFor({ timeout: SET_MS });
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toMatch(/video/i);
    await page.goto(site.url());
    await page.getByText('Your sets will be listed here', { exact: false }).waitFor();
  });
});

describe('in front of a camera', () => {
  const site = siteForTests({ camera: join('tests', 'clips', 'taps-left-steady.mp4') });

  /** From the first opening to a set that is about to start, of four repetitions: the dose without eleven of them. */
  async function walkToASet(page: Page, see: (heading: string) => Promise<void>): Promise<void> {
    await page.getByRole('link', { name: /^Today/ }).click();
    await see('Today');
    await page.getByRole('link', { name: 'Make a plan' }).click();
    await see('Your plan');
    await page.getByRole('button', { name: 'This is my plan' }).click();
    await page.getByRole('link', { name: 'Start' }).click();
    await see('Before you start');
    for (const no of await page.getByRole('radio', { name: 'No' }).all()) await no.check();
    await page.getByRole('button', { name: 'Done' }).click();
    await see('How is it now?');
    await page.getByRole('radio', { name: '3', exact: true }).check();
    await page.getByLabel('Tingling').check();
    await page.locator('[data-place="calf-outer left"]').click();
    await page.getByRole('button', { name: 'Go on to the set' }).click();
    await see('Foot taps, left leg');
    // Fewer than the dose, so that it takes less time: that is always allowed.
    for (let i = 0; i < 11; i += 1) await page.getByRole('button', { name: 'One fewer' }).click();
    await page.getByRole('button', { name: 'Start the camera' }).click();
  }

  /** From the result of a set that was just done to what is said of how the symptoms moved. */
  async function tellAfterwards(page: Page, see: (heading: string) => Promise<void>): Promise<void> {
    await page.waitForURL(/#\/set\//, { timeout: SET_MS });
    await see('Foot taps, left leg');
    await page.getByRole('link', { name: 'Tell how it feels now' }).click();
    await see('How is it after the set?');
    await page.getByRole('radio', { name: '3', exact: true }).check();
    await page.locator('[data-place="buttock left"]').click();
    await page.getByRole('button', { name: 'Keep this' }).click();
    await page.getByText('moved up, toward the back', { exact: false }).waitFor();
  }

  /** The set is in the list of the first screen after a reload, with a count. */
  async function expectStored(page: Page): Promise<void> {
    await page.goto(site.url());
    await page.reload();
    const stored = page.getByRole('link', { name: /^Foot taps, left/ }).first();
    await stored.waitFor();
    expect(await stored.textContent()).toMatch(/\b\d+\b/);
  }

  const seeOn = (page: Page) => async (heading: string) => {
    await page.getByRole('heading', { level: 1, name: heading }).waitFor();
    expect(await findings(page)).toEqual([]);
  };

  test('on a laptop from the first opening over plan, questions and symptoms to a set that is counted live, ends by itself, and is there after a reload', async () => {
    const { page, pageErrors } = await site.open('', { newMachine: true });
    await page.setViewportSize({ width: 1280, height: 800 });
    await walkToASet(page, seeOn(page));
    await tellAfterwards(page, seeOn(page));
    expect(
      await page.evaluate((keys) => keys.map((key) => localStorage.getItem(key)), POSE_MODELS.map(delegateKey)),
    ).toContainEqual(expect.stringMatching(/^[CG]PU$/));
    await page.getByRole('link', { name: 'Back to today' }).click();
    await page.getByText('1 of 3 sets done').waitFor();
    await seeOn(page)('Today');
    await expectStored(page);
    expect(pageErrors).toEqual([]);
  });

  test('on a phone all of it can be reached too, and a set that is stopped after its first repetition is kept', async () => {
    const { page, pageErrors } = await site.open();
    await page.setViewportSize({ width: 390, height: 844 });
    await walkToASet(page, seeOn(page));
    await page.locator('.phase-banner[data-stage="counting"]').waitFor({ timeout: SET_MS });
    await page.getByRole('button', { name: /^Stop/ }).click();
    await tellAfterwards(page, seeOn(page));
    await page.getByRole('link', { name: 'Back to today' }).click();
    await seeOn(page)('Today');
    await expectStored(page);
    expect(pageErrors).toEqual([]);
  });
});
