/** The printed sheet of a plan as it comes out of the printer, with its QR code: from an address that other machines could reach. */
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findChromium, launchChromium } from '../../scripts/chromium.ts';
import { type Site, serveSite } from '../../scripts/serve-site.ts';
import { ALWAYS_SAID, CHOSEN_CAUTIONS } from '../../src/dose/cautions.ts';
import { CAUTION_IDS, PRESCRIBED_EXERCISE_IDS, type PrescribedExercise } from '../../src/dose/prescribed-exercise.ts';
import type { Prescription } from '../../src/dose/prescription.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import { newId } from '../../src/record/new-id.ts';
import { entryNow } from '../../src/screens/day/entry-now.ts';
import { deg } from '../../src/units.ts';
import { wentWell } from '../record/went-well.ts';
import { pagesOf } from './pdf-pages.ts';
import { seed } from './seeded-diary.ts';

const ROOT = join(import.meta.dirname, '..', '..');
/** Nobody's: every request to it is answered here. */
const ADDRESS = 'https://evenside.invalid/';

let running: { readonly site: Site; readonly browser: Browser } | null = null;
beforeAll(async () => {
  const site = wentWell(await serveSite(ROOT, 0));
  running = { site, browser: await launchChromium(wentWell(findChromium(() => {}))) };
});
afterAll(async () => {
  await running?.browser.close();
  await running?.site.close();
});

/** Every caution but one, another one for each exercise: none is common to all, so that each has to be said with its exercise. */
const cautionsBut = (n: number): PrescribedExercise['cautions'] =>
  CAUTION_IDS.filter((id) => id === ALWAYS_SAID || id !== CHOSEN_CAUTIONS[n % CHOSEN_CAUTIONS.length]);

/** So many exercises, each with another dose, range, pace, rest, days and limit for each leg. */
const fullestItems = (exercises: number): readonly PrescribedExercise[] =>
  PRESCRIBED_EXERCISE_IDS.slice(0, exercises).flatMap((id, n) =>
    (['left', 'right'] as const).map((side, leg): PrescribedExercise => {
      const usual = startingDose(id, newId(), [side]);
      return {
        ...usual,
        start: { setsADay: 2 + leg, repsASet: 10 - leg, holdS: usual.start.holdS },
        target: { kind: 'range', fromDeg: deg(12 + 10 * leg), toDeg: deg(18 + 10 * leg) },
        tempoS: 5 - leg,
        restS: 60 + 60 * leg,
        daysAWeek: 6 - leg,
        symptomLimit: 5 - leg,
        cautions: cautionsBut(n),
        basis: 'therapist',
      };
    }),
  );

const planOf = (items: readonly PrescribedExercise[]): Prescription => ({
  ...entryNow('example'),
  kind: 'prescription',
  by: { role: 'therapist', name: 'Wilma Beispiel-Musterfrau, Praxis am Invented Square (invented)' },
  revises: null,
  items,
  selfChecks: { checks: ['big-toe'], sides: ['left', 'right'], everyDays: 7 },
});

interface Answer {
  readonly status: number;
  readonly headers: Record<string, string>;
  readonly body: Buffer;
}

/** What the site answered, by path: each is asked for once. */
const answers = new Map<string, Promise<Answer>>();

async function answerOf(url: URL): Promise<Answer> {
  const answer = await fetch(url);
  const headers = Object.fromEntries([...answer.headers].filter(([name]) => name !== 'content-encoding'));
  return { status: answer.status, headers, body: Buffer.from(await answer.arrayBuffer()) };
}

async function openSheet(plan: Prescription, language: 'en' | 'es'): Promise<Page> {
  if (!running) throw new Error('openSheet requires its hooks to have run');
  const { site, browser } = running;
  const context = await browser.newContext();
  await context.route('**/*', async (route) => {
    const { origin, pathname } = new URL(route.request().url());
    if (`${origin}/` !== ADDRESS) return route.abort();
    const answer = answers.get(pathname) ?? answerOf(new URL(pathname.slice(1), site.url));
    answers.set(pathname, answer);
    return route.fulfill(await answer);
  });
  const page = await context.newPage();
  await page.goto(ADDRESS);
  if (language === 'es') await page.getByRole('button', { name: 'Español' }).click();
  await seed(page, { diary: [plan] });
  await page.goto(`${ADDRESS}#/plan/give`);
  await page.getByRole('textbox', { name: language === 'es' ? 'Como enlace' : 'As a link' }).waitFor();
  // The widest of the fonts that a system may have as its own: with any other there is more room.
  await page.evaluate(() => document.documentElement.style.setProperty('--font', '"DejaVu Sans", Verdana, sans-serif'));
  return page;
}

async function onePage(items: readonly PrescribedExercise[], language: 'en' | 'es') {
  const page = await openSheet(planOf(items), language);
  for (const format of ['A4', 'Letter']) expect(pagesOf(await page.pdf({ format })), format).toBe(1);
  await page.emulateMedia({ media: 'print' });
  const visible = (selector: string) => page.locator(`.plan-sheet ${selector}:visible`).count();
  const exercises = new Set(items.map(({ exercise }) => exercise)).size;
  expect(await visible('.exercise-drawing')).toBe(exercises);
  expect(await visible('.plan-lines-dose')).toBe(items.length);
  expect(await visible('.plan-lines-cautions')).toBe(exercises);
  expect(await visible('.plan-sheet-safety h2')).toBe(3);
  expect(await visible('.qr-code')).toBe(1);
  await page.context().close();
}

describe.each(['en', 'es'] as const)(
  'one page of A4 or Letter with every line, cautions, when to stop and the QR code: %s',
  (language) => {
    test.each([1, 2, 3, 4, 5, 6])('%i exercises with all of it another for each leg', async (exercises) => {
      await onePage(fullestItems(exercises), language);
    });

    test('six exercises with the usual doses for both legs', async () => {
      await onePage(
        PRESCRIBED_EXERCISE_IDS.map((id) => startingDose(id, newId(), ['left', 'right'])),
        language,
      );
    });
  },
);
