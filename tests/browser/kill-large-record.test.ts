/** The tab is closed, or the browser killed, in the midst of taking in a record of very many sets: none of it is there afterwards, and it can be taken in again. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { findChromium } from '../../scripts/chromium.ts';
import { uniformFrom } from '../../src/flow/prng.ts';
import { mortalChromium } from './kill/mortal-chromium.ts';
import type { Kept } from './kill/trial.ts';
import { trialSite } from './kill/trial-site.ts';

/** As in `kill.test.ts`: EVENSIDE_KILLS=200 is a tenth as many here, of records that are as large as they get. */
const KILLS = Number(process.env.EVENSIDE_KILLS ?? 20);
const ENDS = Math.max(2, Math.round(KILLS / 10));
const SETS = KILLS > 20 ? 10_000 : 1000;
const ENTRIES = 30;
/** Of the record, at which the page is ended: what is told of is on its way to the disk, and an order to end takes some time, too. */
const MOST_SHARE = 0.7;
/** An end with what comes before and after it, on a slow and busy machine. Chosen: five times what was seen. */
const SLOWEST_MS = 60_000 + SETS * 30;
const SEED = Number(process.env.EVENSIDE_SEED ?? 20261128);

let site: Awaited<ReturnType<typeof trialSite>>;
let executable = '';
beforeAll(async () => {
  const found = findChromium(() => {});
  if (!found.ok) throw new Error(found.error.words);
  executable = found.value;
  site = await trialSite();
});
afterAll(() => site?.close());

async function opened(page: Page): Promise<void> {
  await page.goto(site.url, { timeout: SLOWEST_MS });
  // Not by its pictures: a page behind another draws none.
  await page.waitForFunction(() => 'trial' in window, null, { timeout: SLOWEST_MS, polling: 100 });
}

/** Begins to take the record in and ends the page once so much of it is written. @returns the share that was */
async function endedAt(page: Page, share: number, end: () => Promise<void>): Promise<number> {
  let reached: (share: number) => void = () => undefined;
  const there = new Promise<number>((resolve) => {
    reached = resolve;
  });
  await page.exposeBinding('underWay', (_, now: number) => {
    if (now >= share) reached(now);
  });
  await opened(page);
  page.evaluate((count) => window.trial.bringMany(count), SETS).catch(() => undefined);
  const at = await there;
  await end();
  return at;
}

/** All of the record is there, or nothing of it. @returns whether it is */
function isThere({ sets, entries, people, faults, strays }: Kept): boolean {
  expect([faults, strays]).toEqual([[], []]);
  const all = sets.length > 0;
  expect([sets.length, entries.length]).toEqual(all ? [SETS, ENTRIES] : [0, 0]);
  expect(people).toEqual([{ id: 'me', sets: sets.length, entries: entries.length }]);
  return all;
}

test(
  `a record of ${SETS} sets is not there by halves when its page ends in the midst of it, and is taken in the next time (${ENDS} times)`,
  async () => {
    const next = uniformFrom(SEED);
    let [none, whole] = [0, 0];
    for (let i = 0; i < ENDS; i += 1) {
      const profile = await mkdtemp(join(tmpdir(), 'evenside-kill-'));
      try {
        let browser = await mortalChromium(executable, profile);
        const { page, kill } = browser;
        // Every fifth at the very end, when the browser makes it last.
        const share = i % 5 === 4 ? 1 : MOST_SHARE * next();
        if (i % 2 === 0) {
          await endedAt(page, share, kill);
          browser = await mortalChromium(executable, profile);
        } else {
          const other = await page.context().newPage();
          await endedAt(page, share, () => page.close());
          browser = { page: other, kill };
        }
        await browser.page.exposeBinding('underWay', () => undefined);
        await opened(browser.page);
        const before = isThere(await browser.page.evaluate(() => window.trial.kept()));
        if (before) whole += 1;
        else none += 1;
        const { sets, entries, conflicts } = await browser.page.evaluate((count) => window.trial.bringMany(count), SETS);
        expect([sets.fresh, sets.same, entries.fresh, entries.same, conflicts]).toEqual(
          before ? [0, SETS, 0, ENTRIES, 0] : [SETS, 0, ENTRIES, 0, 0],
        );
        expect(isThere(await browser.page.evaluate(() => window.trial.kept()))).toBe(true);
        await browser.kill();
        if (KILLS > 20) console.log(`${i + 1} of ${ENDS} ends: ${none} times nothing was there, ${whole} times all`);
      } finally {
        await rm(profile, { recursive: true, force: true, maxRetries: 3 });
      }
    }
    console.log(`${ENDS} ends, seed ${SEED}: ${none} times nothing of ${SETS} sets was there, ${whole} times all; never a part`);
    // Most ends came in time to show what half a record would leave.
    expect(none).toBeGreaterThan(0);
  },
  SLOWEST_MS * (ENDS + 1),
);
