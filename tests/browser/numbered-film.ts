import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';

const MUXER = join(import.meta.dirname, '..', '..', 'node_modules', 'mediabunny', 'dist', 'bundles', 'mediabunny.mjs');
/** An address that exists only inside the page that makes the film; https, because only a secure page may encode. */
const WORKSHOP = 'https://workshop.test/';
const PAGE = `<!doctype html><script type="module">
  import * as muxer from '/muxer.mjs';
  window.muxer = muxer;
</script>`;

/** So many bands of black or white across each picture tell its number in binary, the lowest digit on the left. */
export const BANDS = 8;
export const NUMBERED_SIZE = { width: 640, height: 480 } as const;

declare global {
  interface Window {
    muxer: typeof import('mediabunny');
  }
}

/** Runs in the page: a WebM film whose pictures show their own number. @returns its bytes, one character each */
async function makeInPage({ times, bands, size }: { times: readonly number[]; bands: number; size: typeof NUMBERED_SIZE }) {
  const { BufferTarget, CanvasSource, Output, WebMOutputFormat } = window.muxer;
  const canvas = new OffscreenCanvas(size.width, size.height);
  const context = canvas.getContext('2d', { alpha: false });
  if (!context) throw new Error('makeInPage requires a 2d context, got none');
  const target = new BufferTarget();
  const output = new Output({ format: new WebMOutputFormat(), target });
  // One picture in the whole film stands by itself: every other one needs those before it.
  const source = new CanvasSource(canvas, { codec: 'vp8', bitrate: 2e6, keyFrameInterval: 1000 });
  output.addVideoTrack(source);
  await output.start();
  for (const [i, tMs] of times.entries()) {
    for (let band = 0; band < bands; band += 1) {
      context.fillStyle = (i >> band) & 1 ? '#ffffff' : '#000000';
      context.fillRect((band * size.width) / bands, 0, size.width / bands, size.height);
    }
    await source.add(tMs / 1000, ((times[i + 1] ?? tMs + 40) - tMs) / 1000);
  }
  await output.finalize();
  if (!target.buffer) throw new Error('makeInPage requires a finished film, got none');
  return Array.from(new Uint8Array(target.buffer), (byte) => String.fromCharCode(byte)).join('');
}

/** A film whose n-th picture, from 0, shows the number n, at times of its own. */
export async function numberedFilm(browser: Browser, times: readonly number[]): Promise<Buffer> {
  const context = await browser.newContext();
  try {
    await context.route(`${WORKSHOP}**`, async (route) => {
      const isMuxer = new URL(route.request().url()).pathname === '/muxer.mjs';
      if (isMuxer) return route.fulfill({ contentType: 'text/javascript', body: await readFile(MUXER) });
      return route.fulfill({ contentType: 'text/html', body: PAGE });
    });
    const page = await context.newPage();
    await page.goto(WORKSHOP);
    await page.waitForFunction(() => 'muxer' in window);
    return Buffer.from(await page.evaluate(makeInPage, { times, bands: BANDS, size: NUMBERED_SIZE }), 'latin1');
  } finally {
    await context.close();
  }
}
