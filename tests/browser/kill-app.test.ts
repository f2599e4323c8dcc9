/** The browser's processes are killed while the app itself counts a set in front of the camera: what its screen showed as counted is there afterwards, and it is told what became of the set. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { findChromium, launchChromium } from '../../scripts/chromium.ts';
import { type Site, serveSite } from '../../scripts/serve-site.ts';
import { uniformFrom } from '../../src/flow/prng.ts';
import { POSE_MODELS } from '../../src/pose/model.ts';
import { delegateKey } from '../../src/run/faster-delegate.ts';
import { wentWell } from '../record/went-well.ts';
import { type CameraFile, cameraArgs, cameraFileOf } from './fake-camera.ts';
import { mortalChromium } from './kill/mortal-chromium.ts';

const ROOT = join(import.meta.dirname, '..', '..');
/** On demand many more: EVENSIDE_APP_KILLS=20. */
const KILLS = Number(process.env.EVENSIDE_APP_KILLS ?? 1);
/** A fresh profile after so many, which are those that the first screen lists at once. */
const KILLS_A_PROFILE = 5;
/** A kill at any time comes within this time of the first moment in which the set counts. Chosen: some five repetitions. */
const LATEST_MS = 6000;
/** Of the camera's clip. A kill at a count comes at one of the first. */
const MOST_COUNTS = 4;
/** A kill with the openings around it, on a slow and busy machine. Chosen: five times what was seen. */
const SLOWEST_MS = 150_000;
const SEED = Number(process.env.EVENSIDE_SEED ?? 20261128);

let site: Site;
let camera: CameraFile;
let executable = '';
beforeAll(async () => {
  executable = wentWell(findChromium(() => {}));
  const converter = await launchChromium(executable);
  camera = await cameraFileOf(converter, join(ROOT, 'tests/clips/taps-left-steady.mp4')).finally(() => converter.close());
  site = wentWell(await serveSite(ROOT, 0));
});
afterAll(async () => {
  await site?.close();
  await camera?.remove();
});

type Death = { readonly afterMs: number } | { readonly atCount: number };

const opened = (profile: string) => mortalChromium(executable, profile, [...cameraArgs(camera), '--enable-unsafe-swiftshader']);

/** Tells of each count as the page shows it. */
async function watchCounts(page: Page, onCount: (count: number) => void): Promise<void> {
  await page.exposeBinding('shownCount', (_, count: number) => onCount(count));
  await page.addInitScript(() => {
    let last = 0;
    const look = () => {
      const count = Number(document.querySelector('.count-number')?.textContent ?? 0);
      if (count === last) return;
      last = count;
      (window as unknown as { readonly shownCount: (count: number) => void }).shownCount(count);
    };
    new MutationObserver(look).observe(document, { subtree: true, childList: true, characterData: true });
  });
}

/** Lets the app count a set until all of the browser is killed. @returns how many repetitions its screen had shown, and how many sets its list held before */
async function countedUntilKilled(profile: string, death: Death): Promise<{ readonly shown: number; readonly before: number }> {
  const { page, kill } = await opened(profile);
  let shown = 0;
  let alive = true;
  let dead: () => void = () => undefined;
  const died = new Promise<void>((resolve) => {
    dead = resolve;
  });
  const end = () => {
    alive = false;
    dead();
  };
  try {
    await watchCounts(page, (count) => {
      if (!alive) return;
      shown = Math.max(shown, count);
      if ('atCount' in death && count >= death.atCount) end();
    });
    await page.goto(site.url);
    // As after a first set: the processors need not be timed.
    await page.evaluate((keys) => {
      for (const key of keys) localStorage.setItem(key, 'CPU');
    }, POSE_MODELS.map(delegateKey));
    await page.locator('.set-line, .stored-sets p.soft').first().waitFor();
    const before = await page.locator('.set-line').count();
    await page.goto(`${site.url}#/choose/camera`);
    await page.getByRole('button', { name: 'Start the camera' }).click();
    const asked = page.getByRole('button', { name: 'None of these' });
    const counting = page.locator('.phase-banner[data-stage="counting"]');
    await asked.or(page.locator('.phase-banner')).first().waitFor();
    if (await asked.isVisible()) await asked.click();
    await counting.waitFor({ timeout: SLOWEST_MS / 2 });
    // A count that never comes is no reason to live on.
    const timer = setTimeout(end, 'afterMs' in death ? death.afterMs : 4 * LATEST_MS);
    await died;
    clearTimeout(timer);
    return { shown, before };
  } finally {
    await kill();
  }
}

/** What the app says of the newest set after it was opened again. */
async function toldAfterwards(profile: string, before: number) {
  const { page, kill } = await opened(profile);
  try {
    await page.goto(site.url);
    await expect.poll(() => page.locator('.set-line').count(), { timeout: 30_000 }).toBe(before + 1);
    const line = page.locator('.set-line').first();
    const listed = (await line.textContent()) ?? '';
    await line.click();
    await page.locator('.result-count dd').waitFor();
    const count = Number.parseInt((await page.locator('.result-count dd').textContent()) ?? '', 10);
    const rows = await page.locator('tr.rep[data-look="complete"]').count();
    const notices = (await page.locator('.result-parts').textContent()) ?? '';
    return { listed, count, rows, notices };
  } finally {
    await kill();
  }
}

test(
  `each repetition that the app showed is on its screen after the browser was killed in the set, and so is what became of the set (${KILLS} times)`,
  async () => {
    const next = uniformFrom(SEED);
    let [all, kept, none] = [0, 0, 0];
    for (let done = 0; done < KILLS; done += KILLS_A_PROFILE) {
      const profile = await mkdtemp(join(tmpdir(), 'evenside-kill-app-'));
      try {
        for (let i = done; i < Math.min(KILLS, done + KILLS_A_PROFILE); i += 1) {
          // Half at the very moment a repetition is shown, half at any time.
          const death = i % 2 === 0 ? { atCount: 1 + Math.floor(next() * MOST_COUNTS) } : { afterMs: next() * LATEST_MS };
          const { shown, before } = await countedUntilKilled(profile, death);
          const told = await toldAfterwards(profile, before);
          expect(told.listed).toContain('Interrupted');
          expect(told.notices).toContain('This set was interrupted before its end. The repetitions up to there are kept.');
          expect(told.count, JSON.stringify(death)).toBeGreaterThanOrEqual(shown);
          expect(told.rows).toBe(told.count);
          if (shown === 0) none += 1;
          all += shown;
          kept += told.count;
        }
      } finally {
        await rm(profile, { recursive: true, force: true, maxRetries: 3 });
      }
    }
    console.log(
      `${KILLS} kills of the app, seed ${SEED}: ${all} repetitions shown, ${kept} there afterwards; ${none} sets without one`,
    );
    expect(all).toBeGreaterThanOrEqual(KILLS);
  },
  SLOWEST_MS * (KILLS + 1),
);
