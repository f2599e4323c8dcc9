import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { ensureSite } from '../../scripts/build-site.ts';
import { findChromium, launchChromium } from '../../scripts/chromium.ts';
import { serveSite } from '../../scripts/serve-site.ts';
import { fail, ok, type Result } from '../result.ts';
import { watchWords } from './error-words.ts';
import type { WatchOrder } from './page-protocol.ts';

const ROOT = join(import.meta.dirname, '../..');

/** `unreadable`: the clip is at fault; `nothing-seen`: it can be read, but shows no stickers; `unavailable`: this machine or installation is. `words` say what to do. */
export type WatchFailure = { readonly kind: 'unreadable' | 'nothing-seen' | 'unavailable'; readonly words: string };

/** The landmark recording of a clip as text, and how long the watching took, model loading left out. */
export interface WatchedClip {
  readonly recording: string;
  readonly watchMs: number;
}

/** A headless browser with the built site, for as many clips as are given to it, also at once. */
export interface ClipWatcher {
  /** Watches a video with the site's own page, in a browser storage of its own. `log` hears of the progress. */
  readonly watch: (clip: string, order: WatchOrder, log: (line: string) => void) => Promise<Result<WatchedClip, WatchFailure>>;
  readonly close: () => Promise<void>;
}

const OF_THE_CLIP: readonly string[] = [
  'file-empty',
  'file-not-video',
  'file-no-picture',
  'file-codec',
  'file-damaged',
  'file-broken',
];

async function watchIn(
  browser: Browser,
  site: string,
  clip: string,
  order: WatchOrder,
  log: (line: string) => void,
): Promise<Result<WatchedClip, WatchFailure>> {
  const context = await browser.newContext();
  try {
    const page = await context.newPage();
    let told = 0;
    await page.exposeFunction('frameDone', (tMs: number, durationMs: number) => {
      const share = Math.floor((10 * tMs) / Math.max(1, durationMs));
      if (share > told) log(`${10 * share} % watched`);
      told = Math.max(told, share);
    });
    await page.goto(new URL('src/cli/measure.html', site).href);
    await page.waitForFunction(() => window.watchClip !== undefined);
    await page.setInputFiles('#clip', clip);
    const answer = await page.evaluate((o) => (window.watchClip ?? Promise.reject)(o), order);
    if (answer.ok) return ok(answer);
    const kind =
      answer.error.kind === 'no-stickers' || answer.error.kind === 'no-skin-point'
        ? 'nothing-seen'
        : OF_THE_CLIP.includes(answer.error.kind)
          ? 'unreadable'
          : 'unavailable';
    return fail({ kind, words: watchWords(answer.error, clip) });
  } finally {
    await context.close();
  }
}

/** Builds the site if its sources changed, serves it and starts a headless browser. Whoever starts it closes it. */
export async function startClipWatcher(log: (line: string) => void): Promise<Result<ClipWatcher, WatchFailure>> {
  const unavailable = (words: string) => fail({ kind: 'unavailable' as const, words });
  const built = await ensureSite(ROOT, log);
  if (!built.ok) return unavailable(built.error.words);
  const chromium = findChromium(log);
  if (!chromium.ok) return unavailable(chromium.error.words);
  const site = await serveSite(ROOT, 0);
  if (!site.ok)
    return unavailable('No port on this machine is free for the headless browser: close other programs and try again.');
  const { url, close } = site.value;
  try {
    const browser = await launchChromium(chromium.value);
    return ok({
      watch: (clip, order, progress) => watchIn(browser, url, clip, order, progress),
      close: () => browser.close().finally(close),
    });
  } catch (cause) {
    await close();
    throw cause;
  }
}

/** Watches one video with a watcher of its own. @param log hears of the progress */
export async function watchClip(
  clip: string,
  order: WatchOrder,
  log: (line: string) => void,
): Promise<Result<WatchedClip, WatchFailure>> {
  const watcher = await startClipWatcher(log);
  if (!watcher.ok) return watcher;
  try {
    return await watcher.value.watch(clip, order, log);
  } finally {
    await watcher.value.close();
  }
}
