/** A set whose camera goes away and whose worker dies in the middle: told in a sentence, kept, and gone on with in the same set. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { siteForTests } from './harness.ts';
import { pageFaults } from './page-faults.ts';
import { storedResults } from './stored-results.ts';

/** A set runs as fast as the model on a slow, shared machine allows. */
const SET_MS = 240_000;

const site = siteForTests({ camera: 'tests/clips/taps-left-steady.mp4' });

interface Interruptions {
  /** As if the plug were pulled, and another program took the camera. */
  readonly pull: () => void;
  readonly plug: () => void;
  /** Ends every worker as a crash does. */
  readonly crash: () => void;
}

declare global {
  interface Window {
    interruptions: Interruptions;
  }
}

/** Runs in the page before its own scripts. */
function takeHold(): void {
  const tracks: MediaStreamTrack[] = [];
  const workers: Worker[] = [];
  let away = false;
  const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
  navigator.mediaDevices.getUserMedia = async (wish) => {
    if (away) throw new DOMException('Device in use', 'NotReadableError');
    const stream = await ask(wish);
    tracks.push(...stream.getTracks());
    return stream;
  };
  window.Worker = class extends window.Worker {
    constructor(url: string | URL, options?: WorkerOptions) {
      super(url, options);
      workers.push(this);
    }
  };
  window.interruptions = {
    pull: () => {
      away = true;
      for (const track of tracks.splice(0)) {
        track.stop();
        track.dispatchEvent(new Event('ended'));
      }
    },
    plug: () => {
      away = false;
    },
    crash: () => {
      for (const worker of workers.splice(0)) {
        worker.terminate();
        worker.dispatchEvent(new ErrorEvent('error', { message: 'out of memory' }));
      }
    },
  };
}

const countOf = async (page: Page) => Number(await page.locator('.count-number').textContent());
const countedOn = (page: Page, before: number) => expect.poll(() => countOf(page), { timeout: SET_MS }).toBeGreaterThan(before);

test('the camera pulled out and taken by another program, then the worker crashed: the same set goes on, and what was counted stays', {
  timeout: SET_MS,
}, async () => {
  const { page, pageErrors } = await site.open('#/choose/camera');
  await page.addInitScript(takeHold);
  await page.reload();
  await page.getByRole('button', { name: 'Start the camera' }).click();
  await page.getByRole('button', { name: 'None of these' }).click();
  await page.locator('.phase-banner[data-stage="counting"]').waitFor({ timeout: SET_MS });

  const first = await countOf(page);
  await page.evaluate(() => window.interruptions.pull());
  const panel = page.locator('.away-panel');
  await panel.getByText('The camera is used by another program.').waitFor();
  expect(await panel.textContent()).toContain('What was counted is kept.');
  expect(await pageFaults(page)).toEqual([]);
  // On a phone nothing lies over the way on, and it is seen without scrolling; the banner no longer says that it counts.
  await page.setViewportSize({ width: 390, height: 844 });
  const wayOn = await panel.getByRole('button', { name: 'Go on now' }).evaluate((button) => {
    const { left, right, top, bottom } = button.getBoundingClientRect();
    const over = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
    const room = button.closest('.away-panel')?.getBoundingClientRect();
    return { free: button.contains(over), inside: room !== undefined && bottom <= room.bottom };
  });
  expect(wayOn).toEqual({ free: true, inside: true });
  expect(await page.locator('.set-caption').count()).toBe(0);
  await page.locator('.phase-banner').getByText('No picture: the set waits.').waitFor();
  await page.evaluate(() => window.interruptions.plug());
  await panel.getByRole('button', { name: 'Go on now' }).click();
  await panel.waitFor({ state: 'detached' });
  await countedOn(page, first);

  const second = await countOf(page);
  await page.evaluate(() => window.interruptions.crash());
  await panel.getByText('The part that sees the leg stopped.').waitFor();
  await panel.waitFor({ state: 'detached', timeout: SET_MS });
  await countedOn(page, second);

  const shown = await countOf(page);
  await page.getByRole('button', { name: /^Stop/ }).click();
  await page.waitForURL(/#\/set\//);
  await page.getByText('Every repetition').waitFor();
  const results = await storedResults(page);
  expect(results.length).toBe(1);
  // Each that was shown is there; one beside a break may be judged partial once the whole set is seen.
  expect(results[0]?.result.reps.length ?? 0).toBeGreaterThanOrEqual(shown);
  expect(pageErrors).toEqual([]);
});
