import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { siteForTests } from './harness.ts';

const CLIP = 'tests/clips/taps-left-steady.mp4';
/** Mean difference of two pictures' bytes. Chosen: the JPEG step costs below 2, another scene tens. */
const SAME_SCENE = 6;

/** Added to each pose, so that the model is slower than the camera on every machine. Chosen: five pictures' time. */
const HOLD_MS = 170;
/** A set runs as fast as the model on a slow, shared machine allows. */
const SET_MS = 240_000;

const site = siteForTests({ camera: CLIP });

/** Runs in the page: looks at the camera, and at the clip itself, in small pictures. */
async function watchCamera(clip: string) {
  const canvas = new OffscreenCanvas(64, 48);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('watchCamera requires a 2d context, got none');
  const small = (video: HTMLVideoElement) => {
    context.drawImage(video, 0, 0, 64, 48);
    return [...context.getImageData(0, 0, 64, 48).data];
  };
  const original = document.createElement('video');
  original.src = URL.createObjectURL(new Blob([Uint8Array.from(atob(clip), (c) => c.charCodeAt(0))]));
  original.currentTime = 1;
  await new Promise((resolve) => original.addEventListener('seeked', resolve, { once: true }));
  const wanted = small(original);

  const stream = await navigator.mediaDevices.getUserMedia({ video: { width: 640, height: 480 } });
  const video = document.createElement('video');
  video.muted = true;
  video.srcObject = stream;
  await video.play();
  const seen: number[][] = [];
  while (seen.length < 40) {
    await new Promise((resolve) => video.requestVideoFrameCallback(resolve));
    seen.push(small(video));
  }
  for (const track of stream.getTracks()) track.stop();
  const differences = seen.map(
    (picture) => picture.reduce((sum, x, i) => sum + Math.abs(x - (wanted[i] ?? 0)), 0) / picture.length,
  );
  return {
    size: { width: video.videoWidth, height: video.videoHeight },
    different: new Set(seen.map((picture) => picture.join())).size,
    fromClip: Math.max(...differences),
  };
}

test('the fake camera shows the moving pictures of a clip', async () => {
  const { page } = await site.open();
  const clip = await readFile(join(import.meta.dirname, '..', '..', CLIP), 'base64');
  const { size, different, fromClip } = await page.evaluate(watchCamera, clip);
  expect(size).toEqual({ width: 640, height: 480 });
  expect(different).toBeGreaterThan(20);
  expect(fromClip).toBeLessThan(SAME_SCENE);
});

/** What went to the pose worker and came back. */
interface WorkerTraffic {
  /** Pictures that the pose model was given. */
  posed: number;
  /** Observations without a pose in which foot and shank were followed. */
  byMotionAlone: number;
  /** Times of all observations, as they came. */
  readonly timesMs: number[];
}

declare global {
  interface Window {
    workerTraffic: WorkerTraffic;
  }
}

/** Runs in the page before its own scripts: listens in on its workers, and holds each picture back as a slow model would. */
function watchWorkers(holdMs: number): void {
  interface Seen {
    readonly tMs: number;
    readonly landmarks: unknown;
    readonly motion: { readonly foot: unknown; readonly shank: unknown } | null;
  }
  const traffic: WorkerTraffic = { posed: 0, byMotionAlone: 0, timesMs: [] };
  window.workerTraffic = traffic;
  const answers = new Set<unknown>();
  window.Worker = class extends window.Worker {
    constructor(url: string | URL, options?: WorkerOptions) {
      super(url, options);
      this.addEventListener('message', ({ data }) => {
        if (!answers.delete(data.id)) return;
        for (const { tMs, landmarks, motion } of [data.value].flat() as Seen[]) {
          traffic.timesMs.push(tMs);
          if (!landmarks && motion?.foot && motion.shank) traffic.byMotionAlone += 1;
        }
      });
    }
    override postMessage(message: { readonly id?: unknown; readonly path?: readonly string[] }, rest?: unknown): void {
      const send = () => super.postMessage(message, rest as Transferable[]);
      const asked = message.path?.at(-1);
      if (asked === 'observe' || asked === 'follow') answers.add(message.id);
      if (asked !== 'observe') {
        send();
        return;
      }
      traffic.posed += 1;
      setTimeout(send, holdMs);
    }
  };
}

test('where the pose model is slower than the camera, the pictures between are measured too, all in order', async () => {
  const { page, pageErrors } = await site.open('#/choose/camera');
  await page.addInitScript(watchWorkers, HOLD_MS);
  await page.reload();
  await page.getByRole('button', { name: 'Start the camera' }).click();
  await page.getByRole('button', { name: 'None of these' }).click();
  await page.waitForFunction(() => window.workerTraffic.byMotionAlone >= 20, undefined, { timeout: SET_MS });
  const { posed, timesMs } = await page.evaluate(() => window.workerTraffic);
  expect(timesMs.length).toBeGreaterThan(posed);
  expect(timesMs).toEqual([...new Set(timesMs)].sort((a, b) => a - b));
  expect(pageErrors).toEqual([]);
});
