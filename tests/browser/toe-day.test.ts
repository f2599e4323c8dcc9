/** A day of somebody whose plan has big toe lifts by stickers, before a camera that sees a rendered foot. */
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { siteForTests } from './harness.ts';
import { saidAloud, writeDownVoice } from './heard-voice.ts';
import { seed, seededDiary } from './seeded-diary.ts';
import { storedResults } from './stored-results.ts';

const CLIP = 'tests/clips/toe-left-green.mp4';
/** A slow, shared machine. */
const SET_MS = 120_000;
/** What is about to be said or shown. */
const SOON_MS = 20_000;
/** Where pictures for a look by eye go; none usually. */
const PICTURES = process.env.EVENSIDE_PICTURES;

const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name }).waitFor();
const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).click();

/** The screen as it stands, at a laptop's and a phone's size, light and dark. */
async function seen(page: Page, name: string): Promise<void> {
  if (!PICTURES) return;
  for (const [width, height] of [
    [1280, 800],
    [390, 844],
  ] as const)
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.setViewportSize({ width, height });
      await page.emulateMedia({ colorScheme });
      await page.screenshot({ path: join(PICTURES, `${name}-${width}-${colorScheme}.png`), fullPage: width < 500 });
    }
  await page.setViewportSize({ width: 1280, height: 800 });
}

/** What the person said in the check just kept. */
const toldLast = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<unknown>((done, failed) => {
        const open = indexedDB.open('evenside');
        open.onerror = () => failed(open.error);
        open.onsuccess = () => {
          const all = open.result.transaction('diary').objectStore('diary').getAll();
          all.onerror = () => failed(all.error);
          all.onsuccess = () => done(all.result.filter((entry) => entry.kind === 'self-check').at(-1)?.findings);
        };
      }),
  );

/** The other screens on which stickers show, for a look by eye. */
async function look(page: Page, url: string): Promise<void> {
  for (const [name, address] of [
    ['8-review', '#/review'],
    ['9-report', '#/report'],
  ] as const) {
    await page.goto(`${url}${address}`);
    await page.waitForTimeout(1500);
    await seen(page, name);
  }
  await page.emulateMedia({ media: 'print' });
  await page.screenshot({ path: join(PICTURES ?? '', '9-report-print.png'), fullPage: true });
}

describe('with a foot that lifts its toe', () => {
  // Three lifts, and the rest before them.
  const site = siteForTests({ camera: CLIP, cameraPart: { fromMs: 0, toMs: 6100 } });

  test('from today over set-up and set to the feeling after it, the comparison of the sides, and the weekly check', {
    timeout: SET_MS * 2,
  }, async () => {
    const seeded = seededDiary();
    const { page, context, pageErrors } = await site.open('#/');
    await writeDownVoice(context);
    // The other foot was measured earlier today, and is weaker.
    const now = new Date().toISOString();
    const today = (row: { readonly id?: string }) =>
      row.id === seeded.toeRightId ? { ...row, startedAt: now, source: 'camera' } : row;
    await seed(page, { ...seeded.rows, sets: (seeded.rows.sets as readonly { readonly id: string }[]).map(today) });
    await page.goto(`${site.url()}#/today`);
    await heading(page, 'Today');
    await page.getByText('Big toe lifts').first().waitFor();
    await seen(page, '0-today');
    await page.goto(`${site.url()}#/today/go/${seeded.toeItemId}/left`);
    await heading(page, 'Big toe lifts, left foot');
    await seen(page, '1-go');
    await press(page, 'Start the camera');
    await heading(page, 'Three stickers on your foot');
    await page.getByText('No glint', { exact: true }).waitFor();
    await seen(page, '2-set-up');
    await expect.poll(() => saidAloud(page), { timeout: SOON_MS }).toContain('Three seen. Hold still.');
    await press(page, 'Start the set');
    await page.locator('.phase-banner[data-stage="counting"]').waitFor();
    const count = page.locator('.count-number');
    await expect.poll(async () => Number(await count.textContent()), { timeout: SET_MS }).toBeGreaterThanOrEqual(1);
    await seen(page, '3-set');
    const before = Number(await count.textContent());
    await expect.poll(async () => Number(await count.textContent()), { timeout: SET_MS }).toBeGreaterThan(Math.max(2, before));
    const counted = Number(await count.textContent());
    // A lift that is stopped on its way down is not over: after the third one the foot rests.
    await page.waitForTimeout(900);
    await page.keyboard.press(' ');
    await page.waitForURL(/#\/set\//);
    await page.getByText('Every repetition').waitFor();
    const id = /set\/([^/]+)/.exec(page.url())?.[1] ?? '';
    await seen(page, '4-result');
    expect(await saidAloud(page)).toEqual([
      'Three seen. Hold still.',
      'Good. Now hold still.',
      'Ready. Begin when you like. To stop, press the space bar.',
      ...Array.from({ length: counted }, (_, i) => String(i + 1)),
    ]);
    const { result } = (await storedResults(page)).find(({ setId }) => setId === id) ?? {};
    // Who lifts for a while before the foot is still has these counted afterwards.
    expect(result?.reps.filter((rep) => rep.complete).length).toBeGreaterThanOrEqual(counted);
    await page
      .getByText(/^2\d\.\d° ± \d\.\d°$/)
      .first()
      .waitFor();
    await page.getByRole('link', { name: 'Tell how it feels now' }).click();
    await heading(page, 'How is it after the set?');
    await page.getByRole('radio', { name: '2', exact: true }).check();
    await seen(page, '5-after');
    await press(page, 'Keep this');
    await page.getByRole('link', { name: 'Back to today' }).waitFor();

    await page.goto(`${site.url()}#/set/${id}`);
    await page.getByRole('link', { name: /^With the other side/ }).click();
    await page.getByText(/^Left foot: 1\d\.\d° further\.$/).waitFor();
    await seen(page, '6-compare');

    await page.goto(`${site.url()}#/self-check`);
    await page.getByText(/^Today it lifted 2\d degrees, the other side 1\d\.$/).waitFor();
    await page
      .getByText(
        /^Today it lifted 1\d degrees, the other side 2\d\. That is clearly less\..*Your finger tells, and you decide\.$/,
      )
      .waitFor();
    // Proposed, and nothing chosen: it is the person's own word that is kept.
    const right = page.getByRole('group', { name: 'Right foot' });
    expect(await right.getByRole('radio', { checked: true }).count()).toBe(0);
    await right.getByRole('radio', { name: 'As strong as the other side' }).check();
    await seen(page, '7-check');
    await press(page, 'Keep this');
    await page.getByRole('link', { name: /today/i }).first().waitFor();
    expect(await toldLast(page)).toContainEqual({ check: 'big-toe', side: 'right', found: 'as-strong' });
    if (PICTURES) await look(page, site.url());
    expect(pageErrors).toEqual([]);
  });
});

describe('with a foot that rests', () => {
  const site = siteForTests({ camera: CLIP, cameraPart: { fromMs: 0, toMs: 1300 } });

  test('the set begins by itself once all is right, says so, and nothing is pressed', { timeout: SET_MS }, async () => {
    const { page, context, pageErrors } = await site.open('#/choose/camera');
    await writeDownVoice(context);
    await page.reload();
    await page.getByRole('radio', { name: /Big toe lift/ }).check();
    await press(page, 'Start the camera');
    await press(page, 'None of these');
    await heading(page, 'Three stickers on your foot');
    await press(page, 'Start by itself when my foot is still');
    await page.getByText(/begins in \d/i).waitFor();
    await seen(page, '2-by-itself');
    await page.waitForURL(/#\/run/);
    await page.locator('.phase-banner[data-stage="ready"], .phase-banner[data-stage="counting"]').waitFor();
    await expect
      .poll(() => saidAloud(page), { timeout: SOON_MS })
      .toEqual([
        'Hold still. The set begins.',
        'Good. Now hold still.',
        'Ready. Begin when you like. To stop, press the space bar.',
      ]);
    expect(pageErrors).toEqual([]);
  });
});
