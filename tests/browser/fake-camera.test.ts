import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { siteForTests } from './harness.ts';

const CLIP = 'tests/clips/taps-left-steady.mp4';
/** Mean difference of two pictures' bytes. Chosen: the JPEG step costs below 2, another scene tens. */
const SAME_SCENE = 6;

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
