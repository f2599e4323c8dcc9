/** A set by stickers as a patient does it: the camera shows a foot with three stickers, and nothing else is told. */
import { expect, test } from 'vitest';
import { siteForTests } from './harness.ts';

const SET_MS = 90_000;

const site = siteForTests({ camera: 'tests/clips/toe-left-green.mp4' });

test('big toe lifts in front of the camera are counted without loading a pose model', async () => {
  const { page, pageErrors } = await site.open('#/choose/camera');
  const models: string[] = [];
  page.context().on('request', (request) => {
    if (/\.task$|\.wasm$/.test(new URL(request.url()).pathname)) models.push(request.url());
  });
  await page.getByRole('radio', { name: /Big toe lift/ }).check({ force: true });
  await page.getByRole('button', { name: 'Start the camera' }).click();
  await page.getByRole('button', { name: 'None of these' }).click();
  await page.waitForFunction(() => /Count\s*[3-9]/.test(document.body.textContent ?? ''), undefined, { timeout: SET_MS });
  expect(models).toEqual([]);
  expect(pageErrors).toEqual([]);
});
