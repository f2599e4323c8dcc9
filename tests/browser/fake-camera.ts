import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext } from 'playwright-core';

/** A clip as Chromium's fake camera reads it: JPEG pictures one after the other, played at 30 a second and over again. */
export interface CameraFile {
  readonly path: string;
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

/** A part of a clip that is shown over and over instead of all of it, ms of its own time. */
export interface ClipPart {
  readonly fromMs: number;
  readonly toMs: number;
}

/** Runs in the page: decodes /clip and saves a JPEG for every tick of the camera, one after the other, as a download. */
async function convertInPage({ fps, quality, part }: { fps: number; quality: number; part: ClipPart | null }): Promise<void> {
  const { ALL_FORMATS, BlobSource, Input, VideoSampleSink } = window.demuxer;
  const input = new Input({ source: new BlobSource(await (await fetch('/clip')).blob()), formats: ALL_FORMATS });
  const track = await input.getPrimaryVideoTrack();
  if (!track) throw new Error('convertInPage requires a clip with a picture, got none');
  const canvas = new OffscreenCanvas(await track.getDisplayWidth(), await track.getDisplayHeight());
  const context = canvas.getContext('2d', { alpha: false, willReadFrequently: true });
  if (!context) throw new Error('convertInPage requires a 2d context, got none');
  const firstS = await track.getFirstTimestamp();
  const pictures: Blob[] = [];
  let last: Blob | null = null;
  for await (const sample of new VideoSampleSink(track).samples()) {
    // Ticks before this picture still show the one before it.
    const dueTicks = Math.round((sample.timestamp - firstS) * fps);
    while (last && pictures.length < dueTicks) pictures.push(last);
    sample.draw(context, 0, 0, canvas.width, canvas.height);
    sample.close();
    last = await canvas.convertToBlob({ type: 'image/jpeg', quality });
  }
  if (last) pictures.push(last);
  const tick = (timeMs: number) => Math.round((timeMs * fps) / 1000);
  const shown = part ? pictures.slice(tick(part.fromMs), tick(part.toMs)) : pictures;
  const file = Object.assign(document.createElement('a'), { href: URL.createObjectURL(new Blob(shown)), download: 'camera' });
  file.click();
  input.dispose();
}

declare global {
  interface Window {
    demuxer: typeof import('mediabunny');
  }
}

/**
 * Turns a clip into a file for the fake camera, in the browser itself, so that no other program is needed.
 * @param clip path of a video file that Chromium can decode, any frame rate, a rotation flag is honoured
 * @param part of it; null: all
 */
export async function cameraFileOf(browser: Browser, clip: string, part: ClipPart | null = null): Promise<CameraFile> {
  const folder = await mkdtemp(join(tmpdir(), 'evenside-camera-'));
  const path = join(folder, 'camera.mjpeg');
  const remove = () => rm(folder, { recursive: true, force: true });
  const context = await browser.newContext();
  try {
    await serveWorkshop(context, clip);
    const page = await context.newPage();
    await page.goto(WORKSHOP);
    const [download] = await Promise.all([
      page.waitForEvent('download', { timeout: 0 }),
      page.evaluate(convertInPage, { fps: CAMERA_FPS, quality: JPEG_QUALITY, part }),
    ]);
    await download.saveAs(path);
  } catch (cause) {
    await remove();
    throw cause;
  } finally {
    await context.close();
  }
  return { path, remove };
}
