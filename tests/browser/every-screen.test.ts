/** Every screen, at a laptop's and a phone's size, as somebody needs it who sees less, aims less well, hears it, or has no mouse. */
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test, vi } from 'vitest';
import { fillWithPeople } from '../../scripts/bench/many-people.ts';
import { faultsOf, SIZES, walk, walked } from './every-screen/look.ts';
import { everyLaterPart, everyRoute, isOf } from './every-screen/routes.ts';
import { diaryScreens, EMPTY_SCREENS, peopleScreens, spanishScreens } from './every-screen/screens.ts';
import { siteForTests, type Visit } from './harness.ts';
import { seed, seededDiary, stoppedDiary } from './seeded-diary.ts';

/** So high are the digits of the count at the least, CSS px: read from three metres. */
const LEAST_DIGIT_PX = 160;

/** The model starts as fast as a slow, shared machine allows. */
const START_MS = 120_000;

/** When the screens are looked at, so that what is read is the same in every run. A Wednesday. */
const AT = new Date('2026-03-11T10:30:00Z');

const CLIP = join(import.meta.dirname, '..', '..', 'recordings', 'example-foot-taps.mp4');

const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name }).waitFor();

/** What is made as if it were `AT`. */
function atThatTime<T>(make: () => T): T {
  vi.useFakeTimers({ toFake: ['Date'], now: AT });
  try {
    return make();
  } finally {
    vi.useRealTimers();
  }
}

/** Parts of the program that the walk loaded, by the names of their files. */
const loaded = new Set<string>();

function noteLoaded({ page }: Visit): void {
  page.on('request', (request) => {
    const part = /\/assets\/([\w-]+?)-[\w-]{8}\.js$/.exec(new URL(request.url()).pathname)?.[1];
    if (part) loaded.add(part);
  });
}

describe.concurrent('every screen has no fault that axe knows, large targets, nothing sideways, and all of it is reached by Tab', () => {
  const site = siteForTests();

  /** A new person's visit at that time, whose loaded parts are noted. */
  async function visitAt(address = ''): Promise<Page> {
    const visit = await site.open('#/nowhere', { at: AT });
    noteLoaded(visit);
    await visit.page.goto(`${site.url()}${address}`);
    await visit.page.reload();
    await heading(visit.page, /./);
    return visit.page;
  }

  test('with a plan, measured sets and symptoms', async () => {
    const page = await visitAt();
    const diary = atThatTime(seededDiary);
    await seed(page, diary.rows);
    expect(await walk(page, site.url(), diaryScreens(diary))).toEqual([]);
  });

  test('before there is anything', async () => {
    const page = await visitAt();
    expect(await walk(page, site.url(), EMPTY_SCREENS)).toEqual([]);
  });

  test('in Spanish: chosen on the first screen, remembered, said to the browser', async () => {
    const page = await visitAt();
    await page.getByRole('button', { name: 'Español' }).click();
    await heading(page, /^Sus ejercicios/);
    await page.reload();
    await heading(page, /^Sus ejercicios/);
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('es');
    const diary = atThatTime(seededDiary);
    await seed(page, diary.rows);
    const faults = await walk(page, site.url(), spanishScreens(diary), { loading: 'Cargando', wordsOnly: true });
    expect(faults).toEqual([]);
  });

  test('on the way to a set', async () => {
    const page = await visitAt('#/plan');
    const faults: string[] = [];
    const look = async (...asked: Parameters<typeof faultsOf> extends [Page, ...infer Rest] ? Rest : never) => {
      faults.push(...(await faultsOf(page, ...asked)));
    };
    await page.getByText('Change the dose').click();
    await page.getByRole('radio', { name: 'Different for each leg' }).check();
    await page.getByRole('radio', { name: 'A therapist' }).check();
    await page.getByRole('group', { name: 'Right leg' }).waitFor();
    await page.getByRole('radio', { name: 'A therapist' }).blur();
    await look('plan-each-leg');
    await page.goto(site.url());
    await page.setInputFiles('input[type=file]', CLIP);
    await heading(page, 'What will you do?');
    await page.getByText('example-foot-taps.mp4').waitFor();
    await look('choose-for-a-file');
    await page.goto(`${site.url()}#/choose/camera`);
    await page.reload();
    await page.getByText('More choices').click();
    await page.getByRole('radio', { name: 'Three stickers' }).check();
    await page.getByRole('radio', { name: 'Three stickers' }).blur();
    await page.evaluate(() => window.scrollTo(0, 0));
    // Not by Tab, which leaves the page scrolled so that a phone's fixed button covers the drawing's words; Tab goes through the same with big toe lifts.
    await look('choose-by-stickers', { tab: false });
    await page.getByRole('radio', { name: 'Camera alone' }).check();
    await page.getByRole('radio', { name: 'Big toe lift' }).check();
    await page.getByRole('radio', { name: 'Big toe lift' }).blur();
    await look('choose-toe-lifts');
    await page.getByRole('radio', { name: 'Foot tap' }).check();
    await page.getByRole('button', { name: 'Start the camera' }).click();
    await heading(page, 'Before you start');
    await look('questions-free');
    await page.getByRole('button', { name: 'None of these' }).click();
    await page.getByRole('button', { name: 'Try again' }).waitFor({ timeout: START_MS });
    await look('no-camera');
    await page.goto(`${site.url()}#/choose/camera`);
    await page.getByRole('radio', { name: 'Big toe lift' }).check();
    await page.getByRole('button', { name: 'Start the camera' }).click();
    await heading(page, 'Three stickers on your foot');
    await page.getByRole('button', { name: 'Try again' }).waitFor();
    await look('stickers-no-camera');
    await page.getByRole('link', { name: 'Count without the camera' }).click();
    await page.getByRole('button', { name: 'Count by a beat instead' }).click();
    await page.getByRole('button', { name: 'Start the beat' }).waitFor();
    await look('by-a-beat');
    expect(faults).toEqual([]);
  });

  test('of somebody in a therapist’s list', async () => {
    const page = await visitAt('#/people');
    await fillWithPeople(page, { people: 8, setsEach: 0, withFacts: true, nowMs: AT.getTime() });
    const person = '00000000-0000-4000-8100-000000000005';
    await seed(page, atThatTime(seededDiary).rows, person);
    const faults = [...(await walk(page, site.url(), peopleScreens(person)))];
    await page.goto(`${site.url()}#/person/${person}`);
    await page.getByRole('button', { name: 'Change name and notes' }).click();
    faults.push(...(await faultsOf(page, 'person-changing')));
    await page.getByRole('button', { name: 'Do not change anything' }).click();
    await page.getByRole('button', { name: 'Remove this person' }).click();
    faults.push(...(await faultsOf(page, 'person-removing')));
    expect(faults).toEqual([]);
  });

  test('on a day that a warning sign has stopped', async () => {
    const page = await visitAt();
    await seed(page, atThatTime(stoppedDiary));
    await page.goto(`${site.url()}#/today`);
    await page.getByText('No exercises now: get help at once').waitFor();
    expect(await faultsOf(page, 'today-stopped')).toEqual([]);
  });

  test('while a set runs, whose count has digits at least 160 px high on a laptop', async () => {
    const visit = await site.open();
    noteLoaded(visit);
    const { page } = visit;
    await page.setViewportSize(SIZES.laptop);
    await page.getByRole('button', { name: 'See it on a recorded example' }).click();
    await page.locator('.phase-banner:not([data-stage="opening"])').waitFor({ timeout: START_MS });
    // The ink of the lowest digit as the browser draws it in this font, not the box of its line.
    const lowest = await page.locator('.count-number').evaluate((number) => {
      const pen = document.createElement('canvas').getContext('2d');
      if (!pen) throw new Error('the measure of a digit requires a 2D canvas');
      const { fontWeight, fontSize, fontFamily } = getComputedStyle(number);
      pen.font = `${fontWeight} ${fontSize} ${fontFamily}`;
      return [...'0123456789']
        .map((digit) => {
          const { actualBoundingBoxAscent, actualBoundingBoxDescent } = pen.measureText(digit);
          return { digit, px: actualBoundingBoxAscent + actualBoundingBoxDescent, fontSize };
        })
        .toSorted((a, b) => a.px - b.px)[0];
    });
    expect(lowest?.px).toBeGreaterThanOrEqual(LEAST_DIGIT_PX);
    expect(await faultsOf(page, 'set', { tab: false, tree: false })).toEqual([]);
  });
});

describe('the walk', () => {
  // What is on the screen while the records are locked has its own walk in lock.test.ts; the watchers show nothing.
  const ELSEWHERE = ['erased-screen', 'unlock-screen', 'site-watch', 'due-watcher', 'stored-link', 'server-watch'];

  test('comes to every address of the program', () => {
    const routes = everyRoute();
    expect(routes.length).toBeGreaterThan(30);
    expect(routes.filter((route) => ![...walked].some((address) => isOf(route, address)))).toEqual([]);
  });

  test('loads every part of the program that a screen is', () => {
    const parts = everyLaterPart().filter((part) => !ELSEWHERE.includes(part));
    expect(parts.length).toBeGreaterThan(25);
    expect(parts.filter((part) => !loaded.has(part))).toEqual([]);
  });
});
