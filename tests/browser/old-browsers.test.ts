/** Browsers that lack what current ones have, as far as a page can make one so: what is left still measures, and says what goes less well. */
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { truthOf } from '../clips/truth.ts';
import { siteForTests } from './harness.ts';
import { storedResults } from './stored-results.ts';

/** All of it runs on the page's own thread, on a slow, shared machine. */
const SET_MS = 280_000;
/** Runs in the page before its own scripts: takes away what only current browsers have. */
function beOld(): void {
  for (const name of ['VideoDecoder', 'VideoFrame', 'MediaStreamTrackProcessor', 'OffscreenCanvas']) {
    Object.defineProperty(window, name, { value: undefined });
    Reflect.deleteProperty(window, name);
  }
  Reflect.deleteProperty(HTMLVideoElement.prototype, 'requestVideoFrameCallback');
  Reflect.deleteProperty(HTMLVideoElement.prototype, 'cancelVideoFrameCallback');
}

/** Runs in the page before its own scripts: workers know no modules, and fail on the first line of one. */
function haveClassicWorkersOnly(): void {
  window.Worker = class extends EventTarget {
    constructor() {
      super();
      setTimeout(() =>
        this.dispatchEvent(new ErrorEvent('error', { message: 'import declarations may only appear in a module' })),
      );
    }
    postMessage(): void {}
    terminate(): void {}
  } as unknown as typeof Worker;
}

async function measureFilm(page: Page, clip: string, exercise: string): Promise<readonly { readonly complete: boolean }[]> {
  const { side } = truthOf(clip);
  await page.evaluate((choices) => localStorage.setItem('evenside.choices', JSON.stringify(choices)), {
    exercise,
    side,
    targetReps: 99,
    model: 'lite',
  });
  await page.reload();
  await page.setInputFiles('input[type=file]', join(import.meta.dirname, '..', 'clips', `${clip}.mp4`));
  await page.getByText('old one', { exact: false }).first().waitFor();
  await page.getByRole('button', { name: 'Measure the video' }).click();
  // What was found in its first picture.
  await page.getByText('Are these the three? Then measure.').waitFor({ timeout: SET_MS });
  await page.getByRole('button', { name: 'Measure the video' }).click();
  await page.waitForURL(/#\/set\//, { timeout: SET_MS });
  await page.getByText('Every repetition').waitFor();
  return (await storedResults(page))[0]?.result.reps ?? [];
}

describe('without a camera', () => {
  const site = siteForTests();

  test('without WebCodecs, picture callbacks, drawing in workers: a film is measured picture by picture, to the right count', {
    timeout: SET_MS,
  }, async () => {
    const { page, pageErrors } = await site.open();
    await page.addInitScript(beOld);
    const reps = await measureFilm(page, 'toe-left-green', 'toe-lift');
    expect(reps.filter(({ complete }) => complete).length).toBe(truthOf('toe-left-green').reps.length);
    expect(pageErrors).toEqual([]);
  });

  test('without the database, or with a program that it can’t read, the page says so in two languages instead of staying blank', async () => {
    const { page } = await site.open();
    const says = page.getByText('This browser is too old for Evenside.');
    expect(await says.isVisible()).toBe(false);
    await page.addInitScript(() => Object.defineProperty(window, 'indexedDB', { value: undefined }));
    await page.reload();
    await says.waitFor();
    await page.getByText('demasiado antiguo').waitFor();
    expect(await page.locator('#root').textContent()).toBe('');

    const other = await site.open();
    await other.page.route(/assets\/app-.*\.js$/, (route) =>
      route.fulfill({ contentType: 'text/javascript', body: 'newer words than these: ???' }),
    );
    await other.page.reload();
    await other.page.getByText('This browser is too old for Evenside.').waitFor();
  });
});

describe('without a graphics card, and with none played by the processor', () => {
  const site = siteForTests({
    camera: 'tests/clips/taps-left-steady.mp4',
    args: ['--disable-gpu', '--disable-software-rasterizer'],
  });

  test('the choice says what still works; a set of the whole leg is refused in a sentence before anything is fetched for it, and one by stickers begins', async () => {
    const { page, pageErrors, requests } = await site.open('#/choose/camera');
    await page.getByText('WebGL 2 is missing or switched off').waitFor();
    await page.getByRole('button', { name: 'Start the camera' }).click();
    await page.getByRole('button', { name: 'None of these' }).click();
    await page.getByRole('heading', { level: 1, name: 'The part that sees the leg could not be started.' }).waitFor();
    expect(requests.all.filter((address) => /pose-worker|\.task/.test(address))).toEqual([]);
    await page.getByRole('link', { name: 'Count without the camera' }).waitFor();
    await page.goto(`${site.url()}#/choose/camera`);
    await page.getByRole('radio', { name: 'Big toe lift' }).check();
    await page.getByRole('button', { name: 'Start the camera' }).click();
    await page.getByRole('heading', { level: 1, name: 'Three stickers on your foot' }).waitFor();
    expect(pageErrors).toEqual([]);
  });
});

describe('in front of a camera', () => {
  const site = siteForTests({ camera: 'tests/clips/taps-left-steady.mp4' });

  test('without module workers the pose model can’t run: it is said, and counting by hand is one press away', async () => {
    const { page, pageErrors } = await site.open('#/choose/camera');
    await page.addInitScript(haveClassicWorkersOnly);
    await page.reload();
    await page.getByRole('button', { name: 'Start the camera' }).click();
    await page.getByRole('button', { name: 'None of these' }).click();
    await page.getByRole('heading', { level: 1, name: 'The part that sees the leg could not be started.' }).waitFor();
    await page.getByRole('link', { name: 'Count without the camera' }).waitFor();
    expect(pageErrors).toEqual([]);
  });
});
