import { once } from 'node:events';
import { createWriteStream } from 'node:fs';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext } from 'playwright-core';

/** A clip as Chromium's fake camera reads it: JPEG pictures one after the other, played at 30 a second and over again. */
export interface CameraFile {
  readonly path: string;
  readonly frames: number;
  readonly remove: () => Promise<void>;
}

/** Fixed in Chromium (media/capture/video/file_video_capture_device.cc). */
const CAMERA_FPS = 30;
/** Chosen: the pictures look like a webcam's, and a clip stays below 50 MB. */
const JPEG_QUALITY = 0.92;

const ROOT = join(import.meta.dirname, '..', '..');
const DEMUXER = join(ROOT, 'node_modules', 'mediabunny', 'dist', 'bundles', 'mediabunny.mjs');
/** An address that exists only inside the converting page; https, because only a secure page may decode. */
const WORKSHOP = 'https://workshop.test/';
const WORKSHOP_PAGE = `<!doctype html><script type="module">
  import * as demuxer from '/demuxer.mjs';
  window.demuxer = demuxer;
</script>`;

/** What Chromium needs to play `file` whenever a page asks for the camera, and to say yes for the user. */
export const cameraArgs = (file: CameraFile): readonly string[] => [
  '--use-fake-device-for-media-stream',
  '--use-fake-ui-for-media-stream',
  `--use-file-for-fake-video-capture=${file.path}`,
];

async function serveWorkshop(context: BrowserContext, clip: string): Promise<void> {
  await context.route(`${WORKSHOP}**`, async (route) => {
    const { pathname } = new URL(route.request().url());
    if (pathname === '/demuxer.mjs') return route.fulfill({ contentType: 'text/javascript', body: await readFile(DEMUXER) });
    if (pathname === '/clip') return route.fulfill({ contentType: 'application/octet-stream', body: await readFile(clip) });
    return route.fulfill({ contentType: 'text/html', body: WORKSHOP_PAGE });
  });
}

/** Runs in the page: decodes /clip and hands over a JPEG for every tick of the camera. */
async function convertInPage({ fps, quality }: { fps: number; quality: number }): Promise<void> {
  const { ALL_FORMATS, BlobSource, Input, VideoSampleSink } = window.demuxer;
  const input = new Input({ source: new BlobSource(await (await fetch('/clip')).blob()), formats: ALL_FORMATS });
  const track = await input.getPrimaryVideoTrack();
  if (!track) throw new Error('convertInPage requires a clip with a picture, got none');
  const canvas = new OffscreenCanvas(await track.getDisplayWidth(), await track.getDisplayHeight());
  const context = canvas.getContext('2d', { alpha: false });
  if (!context) throw new Error('convertInPage requires a 2d context, got none');
  const firstS = await track.getFirstTimestamp();
  let ticks = 0;
  let last = '';
  for await (const sample of new VideoSampleSink(track).samples()) {
    // Ticks before this picture still show the one before it.
    const dueTicks = Math.round((sample.timestamp - firstS) * fps);
    for (; last && ticks < dueTicks; ticks += 1) await window.takeJpeg(last);
    sample.draw(context, 0, 0, canvas.width, canvas.height);
    sample.close();
    const bytes = new Uint8Array(await (await canvas.convertToBlob({ type: 'image/jpeg', quality })).arrayBuffer());
    last = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  }
  await window.takeJpeg(last);
  input.dispose();
}

declare global {
  interface Window {
    demuxer: typeof import('mediabunny');
    /** Takes one JPEG as a string of its bytes. */
    takeJpeg: (bytes: string) => Promise<void>;
  }
}

/**
 * Turns a clip into a file for the fake camera, in the browser itself, so that no other program is needed.
 * @param clip path of a video file that Chromium can decode, any frame rate, a rotation flag is honoured
 */
export async function cameraFileOf(browser: Browser, clip: string): Promise<CameraFile> {
  const folder = await mkdtemp(join(tmpdir(), 'evenside-camera-'));
  const path = join(folder, 'camera.mjpeg');
  const remove = () => rm(folder, { recursive: true, force: true });
  const out = createWriteStream(path);
  let frames = 0;
  const context = await browser.newContext();
  try {
    await serveWorkshop(context, clip);
    const page = await context.newPage();
    await page.exposeFunction('takeJpeg', async (bytes: string) => {
      frames += 1;
      if (!out.write(Buffer.from(bytes, 'latin1'))) await once(out, 'drain');
    });
    await page.goto(WORKSHOP);
    await page.evaluate(convertInPage, { fps: CAMERA_FPS, quality: JPEG_QUALITY });
  } catch (cause) {
    await remove();
    throw cause;
  } finally {
    await context.close();
    out.end();
    await once(out, 'close');
  }
  return { path, frames, remove };
}
