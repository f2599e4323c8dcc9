import { join } from 'node:path';
import { ensureSite } from '../../scripts/build-site.ts';
import { findChromium, launchChromium } from '../../scripts/chromium.ts';
import { serveSite } from '../../scripts/serve-site.ts';
import { fail, ok, type Result } from '../result.ts';
import { watchWords } from './error-words.ts';
import type { WatchOrder } from './page-protocol.ts';

const ROOT = join(import.meta.dirname, '../..');

/** `unreadable`: the clip is at fault; `unavailable`: this machine or installation is. `words` say what to do. */
export type WatchFailure = { readonly kind: 'unreadable' | 'unavailable'; readonly words: string };

const OF_THE_CLIP: readonly string[] = [
  'file-empty',
  'file-not-video',
  'file-no-picture',
  'file-codec',
  'file-damaged',
  'file-broken',
];

/**
 * Watches a video in a headless browser, with the built site's own page.
 * @param log hears of the progress
 * @returns the landmark recording as text, and how long the watching took, model loading left out
 */
export async function watchClip(
  clip: string,
  order: WatchOrder,
  log: (line: string) => void,
): Promise<Result<{ readonly recording: string; readonly watchMs: number }, WatchFailure>> {
  const unavailable = (words: string) => fail({ kind: 'unavailable' as const, words });
  const built = await ensureSite(ROOT, log);
  if (!built.ok) return unavailable(built.error.words);
  const chromium = findChromium(log);
  if (!chromium.ok) return unavailable(chromium.error.words);
  const site = await serveSite(ROOT, 0);
  if (!site.ok)
    return unavailable('No port on this machine is free for the headless browser: close other programs and try again.');
  try {
    const browser = await launchChromium(chromium.value);
    try {
      const page = await browser.newPage();
      let told = 0;
      await page.exposeFunction('frameDone', (tMs: number, durationMs: number) => {
        const share = Math.floor((10 * tMs) / Math.max(1, durationMs));
        if (share > told) log(`${10 * share} % watched`);
        told = Math.max(told, share);
      });
      await page.goto(new URL('src/cli/measure.html', site.value.url).href);
      await page.waitForFunction(() => window.watchClip !== undefined);
      await page.setInputFiles('#clip', clip);
      const answer = await page.evaluate((o) => (window.watchClip ?? Promise.reject)(o), order);
      if (answer.ok) return ok(answer);
      const kind = OF_THE_CLIP.includes(answer.error.kind) ? 'unreadable' : 'unavailable';
      return fail({ kind, words: watchWords(answer.error, clip) });
    } finally {
      await browser.close();
    }
  } finally {
    await site.value.close();
  }
}
