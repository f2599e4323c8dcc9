/** The therapist's measuring in a film, picture by picture, in a photo, and with points that a hand sets. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { siteForTests } from './harness.ts';
import { BANDS, NUMBERED_SIZE, numberedFilm } from './numbered-film.ts';
import { pageFaults } from './page-faults.ts';

const CLIPS = join(import.meta.dirname, '..', 'clips');
/** A marked angle is aimed at lying this near to the truth; one whose points were set by hand, to where the true joints lie in the picture. */
const WITHIN_DEG = 4;
const BY_HAND_WITHIN_DEG = 1;
/** The model starts and measures as fast as a slow, shared machine allows. */
const MEASURED_MS = 240_000;

const site = siteForTests();

type Point = readonly [number, number];

interface Truth {
  readonly reps: readonly { readonly peakMs: number; readonly truePeakDeg: number }[];
  readonly frames: readonly {
    readonly tMs: number;
    readonly legElevationDeg: number;
    readonly jointsPx: Readonly<Record<'hipL' | 'kneeL' | 'ankleL', Point>>;
  }[];
}

const truthOf = (id: string): Truth => JSON.parse(readFileSync(join(CLIPS, `${id}.truth.json`), 'utf8'));
const shownAngle = async (page: Page) => Number.parseFloat((await page.locator('.desk-angle').textContent()) ?? '');
const scrub = (page: Page) => page.getByRole('slider', { name: 'Place in the video' });
const isShown = (page: Page, tMs: number) => page.locator(`[data-shown-ms="${tMs}"]`).waitFor();

async function openFilm(page: Page, film: string | { name: string; mimeType: string; buffer: Buffer }): Promise<void> {
  await page.getByRole('radio', { name: /A video/ }).check();
  await page.locator('input[type=file]').setInputFiles(film);
  await page.getByRole('button', { name: 'Start measuring' }).click();
  await scrub(page).waitFor({ timeout: MEASURED_MS });
}

/** Both sizes, without a fault that axe knows, small targets or anything sideways. */
async function faultless(page: Page): Promise<void> {
  for (const viewport of [
    { width: 390, height: 844 },
    { width: 1280, height: 800 },
  ]) {
    await page.setViewportSize(viewport);
    expect(await pageFaults(page), `${viewport.width} px wide`).toEqual([]);
  }
}

/** Drags a point with the mouse; the whole picture is shown. @param by px of the picture */
async function drag(page: Page, point: string, by: Point): Promise<void> {
  const handle = await page.locator(`[data-point=${point}]`).boundingBox();
  const picture = await page.locator('.leg-handles').boundingBox();
  if (!handle || !picture) throw new Error(`drag requires the handle of the ${point} and its picture`);
  const scale = picture.width / 640;
  const [x, y] = [handle.x + handle.width / 2, handle.y + handle.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + by[0] * scale, y + by[1] * scale, { steps: 4 });
  await page.mouse.up();
}

/** How far a point lies from where it should, as its label tells, px. */
async function offOf(page: Page, point: string, at: Point): Promise<Point> {
  const label = (await page.locator(`[data-point=${point}]`).getAttribute('aria-label')) ?? '';
  const [x, y] = (label.match(/\d+/g) ?? []).map(Number);
  return [at[0] - Number(x), at[1] - Number(y)];
}

/** Moves the point that has the focus with the arrow keys. */
async function byKeys(page: Page, [across, down]: Point): Promise<void> {
  for (const [value, forth, back] of [
    [Math.round(across), 'ArrowRight', 'ArrowLeft'],
    [Math.round(down), 'ArrowDown', 'ArrowUp'],
  ] as const) {
    const key = value > 0 ? forth : back;
    for (let i = 0; i < Math.floor(Math.abs(value) / 10); i += 1) await page.keyboard.press(`Shift+${key}`);
    for (let i = 0; i < Math.abs(value) % 10; i += 1) await page.keyboard.press(key);
  }
}

test('angles of a film and of a photo are near the truth, those set by hand nearer; angles are what is kept, in the record of the person', async () => {
  const id = 'slr-left-kneebend';
  const { reps, frames } = truthOf(id);
  const [first] = frames;
  const [{ peakMs = 0 } = {}] = reps;
  const peak = frames.findIndex(({ tMs }) => tMs === peakMs);
  const there = frames[peak];
  if (!first || !there) throw new Error('the test requires a truth with a frame at the first peak');
  const { hipL, kneeL, ankleL } = there.jointsPx;
  const pixelTruthDeg = (Math.atan2(hipL[1] - ankleL[1], hipL[0] - ankleL[0]) * 180) / Math.PI;
  const { page, pageErrors } = await site.open('#/people/new');
  await page.getByLabel('Name or code').fill('Ina Invented');
  await page.getByRole('button', { name: 'Keep' }).click();
  await page.getByRole('link', { name: /^Measure an angle/ }).click();
  await page.getByText('Record of Ina Invented').waitFor();
  await openFilm(page, join(CLIPS, `${id}.mp4`));

  // Every peak, from the curve.
  for (const { peakMs: at, truePeakDeg } of reps) {
    await scrub(page).fill(String(frames.findIndex(({ tMs }) => tMs === at)));
    await isShown(page, at);
    const fromRestDeg = truePeakDeg - first.legElevationDeg;
    expect(Math.abs((await shownAngle(page)) - fromRestDeg), `at ${at}`).toBeLessThan(WITHIN_DEG);
  }
  // Step by step to the first one, by key and by button, and marked there.
  await scrub(page).fill(String(peak - 2));
  await page.keyboard.press('.');
  await isShown(page, frames[peak - 1]?.tMs ?? 0);
  await page.getByRole('button', { name: 'Next picture' }).click();
  await isShown(page, peakMs);
  await page.keyboard.press(',');
  await isShown(page, frames[peak - 1]?.tMs ?? 0);
  await page.keyboard.press('.');
  await isShown(page, peakMs);
  await page.getByRole('button', { name: 'Pulled up' }).click();
  await page.keyboard.press('2');
  const photo = await page
    .locator('.still-picture > canvas')
    .evaluate((canvas) => (canvas as HTMLCanvasElement).toDataURL('image/png').split(',')[1] ?? '');

  // The points put where the true joints are: two with the mouse, one by keyboard.
  await page.getByRole('button', { name: 'Correct the points' }).click();
  await page.locator('[data-point=knee]').focus();
  await faultless(page);
  await page.getByRole('button', { name: 'Whole picture' }).click();
  await drag(page, 'hip', await offOf(page, 'hip', hipL));
  await drag(page, 'knee', await offOf(page, 'knee', kneeL));
  await page.locator('[data-point=ankle]').focus();
  await byKeys(page, await offOf(page, 'ankle', ankleL));
  await page.getByText('Corrected by hand').waitFor();
  const byHand = await shownAngle(page);
  expect(Math.abs(byHand - pixelTruthDeg), `${byHand} for ${pixelTruthDeg}`).toBeLessThan(BY_HAND_WITHIN_DEG);
  await page.keyboard.press('2');
  await page.getByRole('button', { name: 'Done' }).click();

  // Both stand apart in the results: one from rest, one from the horizontal.
  const cell = (row: string) => page.getByRole('row', { name: row }).getByRole('cell').first().textContent();
  const followed = Number.parseFloat((await cell('Left leg, As far as it goes (from rest)')) ?? '');
  expect(Math.abs(followed - (there.legElevationDeg - first.legElevationDeg))).toBeLessThan(WITHIN_DEG);
  expect(await cell('Left leg, As far as it goes (not from rest)')).toBe(`${byHand.toFixed(1)}° by hand`);
  await page.getByText('Each mark, with foot and symptom').click();
  await page
    .getByRole('combobox', { name: /Trial 1: Felt at/ })
    .first()
    .selectOption('Back of the calf');
  await faultless(page);
  await page.getByRole('button', { name: 'Keep these 2 angles' }).click();
  await page.getByText('2 angles are kept.').waitFor();

  // The same picture as a photo: by its points alone.
  await page.getByRole('radio', { name: /A photo/ }).check();
  await page
    .locator('input[type=file]')
    .setInputFiles({ name: 'raised.png', mimeType: 'image/png', buffer: Buffer.from(photo, 'base64') });
  await page.getByRole('button', { name: 'Measure this photo' }).click();
  await page.getByText('From the points of this picture alone').waitFor({ timeout: MEASURED_MS });
  const angle = await shownAngle(page);
  const error = Number.parseFloat(((await page.locator('.reading-error').textContent()) ?? '').replace('± ', ''));
  expect(Math.abs(angle - pixelTruthDeg), `${angle} ± ${error} for ${pixelTruthDeg}`).toBeLessThan(error);
  await faultless(page);

  const record = page.url().replace(/desk$/, '');
  await page.goto(`${record}review`);
  const kept = page.getByRole('row', { name: /Left leg, limit, from rest, foot pulled up/ });
  expect(await kept.textContent()).toContain(`${followed.toFixed(1)}°`);
  expect(await page.getByRole('row', { name: /Left leg, limit, the joint’s own angle/ }).textContent()).toContain(
    'corrected by hand',
  );
  await page.goto(`${site.url()}#/review`);
  await page.getByText('There is no plan yet').waitFor();
  expect(await kept.count()).toBe(0);
  expect(pageErrors).toEqual([]);
});

test('each picture of a film is the file’s own at its own time, and where no leg is found points are set by keyboard alone', async () => {
  // Uneven steps, as a phone makes them.
  const times = [0, 40, 73, 140, 173, 207, 240, 340, 373, 407, 440, 475, 540, 573, 640, 673];
  const { page, context, pageErrors } = await site.open('#/desk');
  const browser = context.browser();
  if (!browser) throw new Error('the test requires a browser of its own');
  const buffer = await numberedFilm(browser, times);
  await openFilm(page, { name: 'numbered.webm', mimeType: 'video/webm', buffer });
  await page.getByText('No movement from rest was found in this video.').waitFor();
  const numberShown = () =>
    page.locator('.still-picture > canvas').evaluate(
      (canvas, { bands, width, height }) => {
        const context = (canvas as HTMLCanvasElement).getContext('2d');
        const at = (band: number) => context?.getImageData(((band + 0.5) * width) / bands, height / 2, 1, 1).data[0] ?? 0;
        return Array.from({ length: bands }, (_, band) => (at(band) > 127 ? 2 ** band : 0)).reduce((sum, bit) => sum + bit, 0);
      },
      { bands: BANDS, ...NUMBERED_SIZE },
    );
  for (const n of [0, 15, 14, 3, 7, 1, 12, 8]) {
    await scrub(page).fill(String(n));
    await isShown(page, times[n] ?? Number.NaN);
    expect(await numberShown()).toBe(n);
  }
  await scrub(page).focus();
  await page.keyboard.press('ArrowRight');
  await isShown(page, 407);
  expect(await numberShown()).toBe(9);

  await page.keyboard.press('2');
  await page.getByText('The leg was not found here.').first().waitFor();
  await page.getByRole('button', { name: 'Correct the points' }).focus();
  await page.keyboard.press('Enter');
  await page.locator('[data-point=ankle]').focus();
  for (let i = 0; i < 9; i += 1) await page.keyboard.press('Shift+ArrowUp');
  // A hip at 384, 288 and an ankle at 192, 198.
  expect(await shownAngle(page)).toBeCloseTo((Math.atan2(90, 192) * 180) / Math.PI, 1);
  await page.keyboard.press('2');
  await page.getByRole('button', { name: 'Done' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('row', { name: /^Left leg, As far as it goes/ }).waitFor();
  expect(pageErrors).toEqual([]);
});
