/** Every screen, at a laptop's and a phone's size, as somebody needs it who sees less, aims less well, or has no mouse. */
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { fillWithPeople } from '../../scripts/bench/many-people.ts';
import { serveSite } from '../../scripts/serve-site.ts';
import { wentWell } from '../record/went-well.ts';
import { siteForTests } from './harness.ts';
import { tabThrough, tabTo } from './keyboard.ts';
import { pageFaults } from './page-faults.ts';
import { seed, seededDiary, stoppedDiary } from './seeded-diary.ts';

const SIZES = { laptop: { width: 1280, height: 800 }, phone: { width: 390, height: 844 } } as const;

/** So high are the digits of the count at the least, CSS px: read from three metres. */
const LEAST_DIGIT_PX = 160;

/** The model starts as fast as a slow, shared machine allows. */
const START_MS = 120_000;

const ROOT = join(import.meta.dirname, '..', '..');
const CLIP = join(ROOT, 'recordings', 'example-foot-taps.mp4');

const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name }).waitFor();

/**
 * Looks at a screen at both sizes, on a laptop in the dark too, with all that folds unfolded; goes through it by Tab unless it changes meanwhile.
 * @returns one line for each fault
 */
async function faultsOf(page: Page, screen: string, { tab = true } = {}): Promise<readonly string[]> {
  const faults: string[] = [];
  await page.evaluate(() => {
    for (const folded of document.querySelectorAll('details')) folded.open = true;
    // What was pressed last has the focus already: its look without it is to be known too.
    if (document.activeElement instanceof HTMLButtonElement) document.activeElement.blur();
  });
  for (const [size, viewport] of Object.entries(SIZES)) {
    await page.setViewportSize(viewport);
    // What is drawn as wide as there is room is drawn anew.
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
    // On a busy machine a chart follows its place some frames later.
    await page.waitForTimeout(300);
    for (const colorScheme of size === 'laptop' ? (['dark', 'light'] as const) : (['light'] as const)) {
      await page.emulateMedia({ colorScheme });
      faults.push(...(await pageFaults(page)).map((fault) => `${screen}, ${size}, ${colorScheme}: ${fault}`));
    }
    if (tab) faults.push(...(await tabThrough(page)).map((fault) => `${screen}, ${size}: ${fault}`));
  }
  return faults;
}

describe.concurrent('every screen has no fault that axe knows, large targets, nothing sideways, and all of it is reached by Tab', () => {
  const site = siteForTests();

  test('before there is anything', async () => {
    const { page } = await site.open();
    const faults: string[] = [];
    const screens = [
      ['', 'Your leg exercises, counted and measured'],
      ['#/choose/camera', 'What will you do?'],
      ['#/urgent', 'Signs that need urgent care'],
      ['#/today', 'Today'],
      ['#/plan', 'Your plan'],
      ['#/plan/give', 'Give this plan'],
      ['#/take', 'A plan for you'],
      ['#/take/AQ', 'A plan for you'],
      ['#/progress', 'How it is going'],
      ['#/report', 'Report for the therapist'],
      ['#/review', 'Review'],
      ['#/desk', 'Measure an angle'],
      ['#/lock', 'Passphrase lock'],
      ['#/stored', 'What is stored here'],
      ['#/people', 'People'],
      ['#/people/new', 'A new person'],
      ['#/person/nobody', 'People'],
      ['#/nowhere', 'There is nothing at this address.'],
    ] as const;
    for (const [address, title] of screens) {
      await page.goto(`${site.url()}${address}`);
      await heading(page, title);
      await page.getByText('Loading', { exact: true }).waitFor({ state: 'detached' });
      faults.push(...(await faultsOf(page, address || 'start')));
    }
    await page.goto(`${site.url()}#/plan`);
    await page.getByText('Change the dose').click();
    await page.getByRole('radio', { name: 'Different for each leg' }).check();
    await page.getByRole('radio', { name: 'A therapist' }).check();
    await page.getByRole('group', { name: 'Right leg' }).waitFor();
    await page.getByRole('radio', { name: 'A therapist' }).blur();
    faults.push(...(await faultsOf(page, 'plan, another dose for each leg')));
    await page.goto(site.url());
    await page.setInputFiles('input[type=file]', CLIP);
    await heading(page, 'What will you do?');
    await page.getByText('example-foot-taps.mp4').waitFor();
    faults.push(...(await faultsOf(page, 'choose for a file')));
    await page.goto(`${site.url()}#/choose/camera`);
    await page.reload();
    await page.getByText('More choices').click();
    await page.getByRole('radio', { name: 'Three stickers' }).check();
    await page.getByRole('radio', { name: 'Three stickers' }).blur();
    await page.evaluate(() => window.scrollTo(0, 0));
    // Not by Tab, which leaves the page scrolled so that a phone's fixed button covers the drawing's words; Tab goes through the same with big toe lifts.
    faults.push(...(await faultsOf(page, 'choose foot taps by stickers', { tab: false })));
    await page.getByRole('radio', { name: 'Camera alone' }).check();
    await page.getByRole('radio', { name: 'Big toe lift' }).check();
    await page.getByRole('radio', { name: 'Big toe lift' }).blur();
    faults.push(...(await faultsOf(page, 'choose big toe lifts')));
    await page.getByRole('radio', { name: 'Foot tap' }).check();
    await page.getByRole('button', { name: 'Start the camera' }).click();
    await heading(page, 'Before you start');
    faults.push(...(await faultsOf(page, 'questions before a free set')));
    await page.getByRole('button', { name: 'None of these' }).click();
    await page.getByRole('button', { name: 'Try again' }).waitFor({ timeout: START_MS });
    faults.push(...(await faultsOf(page, 'without a camera')));
    await page.goto(`${site.url()}#/choose/camera`);
    await page.getByRole('radio', { name: 'Big toe lift' }).check();
    await page.getByRole('button', { name: 'Start the camera' }).click();
    await heading(page, 'Three stickers on your foot');
    await page.getByRole('button', { name: 'Try again' }).waitFor();
    faults.push(...(await faultsOf(page, 'stickers without a camera')));
    await page.getByRole('link', { name: 'Count without the camera' }).click();
    await page.getByRole('button', { name: 'Count by a beat instead' }).click();
    await page.getByRole('button', { name: 'Start the beat' }).waitFor();
    faults.push(...(await faultsOf(page, 'by a beat')));
    expect(faults).toEqual([]);
  });

  test('with a plan, measured sets and symptoms', async () => {
    const { rows, planCode, itemId, handSetId, leftId, rightId, raiseId, glideId, wrongGlideId, glideItemId, ...toe } =
      seededDiary();
    const { page } = await site.open();
    await seed(page, rows);
    const faults: string[] = [];
    const screens = [
      ['start with sets', '', /^Your leg exercises/, /^Foot taps, left/],
      ['today with a plan', '#/today', 'Today', 'Foot taps, left leg'],
      ['questions', `#/questions/${itemId}/left`, 'Before you start', 'Yes'],
      ['before a set', `#/feel/before/${itemId}/left`, 'How is it now?', 'As a list'],
      ['go', `#/today/go/${itemId}/left`, 'Foot taps, left leg', 'Count without the camera'],
      ['go, nerve glides', `#/today/go/${glideItemId}/left`, 'Nerve glides, left leg', 'Pause the drawing'],
      ['go, big toe lifts', `#/today/go/${toe.toeItemId}/left`, 'Big toe lifts, left foot', 'about 30 cm'],
      ['by hand', `#/by-hand/${itemId}/left`, 'Foot taps, left leg', 'One more'],
      ['after a set', `#/feel/after/${handSetId}`, 'How is it after the set?', 'As a list'],
      ['check-in', '#/check-in', /^How was it after/, 'As a list'],
      ['self-check', '#/self-check', 'Check your strength', 'Left leg'],
      ['give', '#/plan/give', 'Give this plan', 'As a QR code'],
      ['take', `#/take/${planCode}`, 'A plan for you', 'You have this plan already.'],
      ['progress', '#/progress', 'How it is going', 'Big toe lifts, left foot'],
      ['report', '#/report', 'Report for the therapist', 'Prescribed'],
      ['send', '#/send', 'Send my record', 'This file is health data.'],
      ['move', '#/bring', 'Move to another machine', 'Choose the file'],
      ['review', '#/review', 'Review', 'Every set'],
      ['result', `#/set/${rightId}`, 'Foot taps, right leg', /./],
      ['result of leg raises', `#/set/${raiseId}`, 'Straight leg raises, left leg', /./],
      ['result of glides', `#/set/${glideId}`, 'Nerve glides, left leg', /went the right way/],
      ['result of glides the other way round', `#/set/${wrongGlideId}`, 'Nerve glides, left leg', /^The other way round/],
      ['compare glides', `#/compare/${glideId}/${wrongGlideId}`, /then and now$/, 'Foot and head together'],
      ['result of big toe lifts', `#/set/${toe.toeLeftId}`, 'Big toe lifts, left foot', /./],
      ['compare big toes', `#/compare/${toe.toeRightId}/${toe.toeLeftId}`, /both sides$/, /^Left foot: 1\d/],
      ['compare', `#/compare/${leftId}/${rightId}`, /both sides$/, 'What'],
    ] as const;
    for (const [screen, address, title, text] of screens) {
      await page.goto(`${site.url()}${address}`);
      await heading(page, title);
      await page.getByText(text).first().waitFor();
      await page.getByText('Loading', { exact: true }).waitFor({ state: 'detached' });
      faults.push(...(await faultsOf(page, screen)));
    }
    expect(faults).toEqual([]);
  });

  test('of somebody in a therapist’s list', async () => {
    const { page } = await site.open('#/people');
    await fillWithPeople(page, { people: 8, setsEach: 0, withFacts: true });
    const person = '00000000-0000-4000-8100-000000000005';
    const { rows } = seededDiary();
    await seed(page, rows, person);
    const faults: string[] = [];
    const screens = [
      ['list', '#/people', 'People', '8 people, 5 need you'],
      ['person', `#/person/${person}`, 'Invented 5', 'Review'],
      ['taking in', '#/people/bring', 'Take in a record', 'Choose the file'],
      ['their report', `#/person/${person}/report`, 'Report for the therapist', 'Record of Invented 5'],
    ] as const;
    for (const [screen, address, title, text] of screens) {
      await page.goto(`${site.url()}${address}`);
      await heading(page, title);
      await page.getByText(text).first().waitFor();
      faults.push(...(await faultsOf(page, screen)));
    }
    await page.goto(`${site.url()}#/person/${person}`);
    await page.getByRole('button', { name: 'Change name and notes' }).click();
    faults.push(...(await faultsOf(page, 'name and notes')));
    await page.getByRole('button', { name: 'Do not change anything' }).click();
    await page.getByRole('button', { name: 'Remove this person' }).click();
    faults.push(...(await faultsOf(page, 'removing')));
    expect(faults).toEqual([]);
  });

  test('on a day that a warning sign has stopped', async () => {
    const { page } = await site.open();
    await seed(page, stoppedDiary());
    await page.goto(`${site.url()}#/today`);
    await page.getByText('No exercises now: get help at once').waitFor();
    expect(await faultsOf(page, 'today, stopped')).toEqual([]);
  });

  test('while a set runs, whose count has digits at least 160 px high on a laptop', async () => {
    const { page } = await site.open();
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
    expect(await faultsOf(page, 'running set', { tab: false })).toEqual([]);
  });
});

describe.concurrent('where the page knows a clinic’s server that nobody asks yet', () => {
  const known = { fhirServer: 'https://fhir.example.org/r4', clientId: 'evenside-test', signIn: ['https://login.example.org'] };
  const site = siteForTests({ serve: async () => wentWell(await serveSite(ROOT, 0, known)) });
  const person = '00000000-0000-4000-8100-000000000001';
  const at = '2026-03-01T10:00:00.000Z';
  const connection = {
    person: 'me',
    server: known.fhirServer,
    patient: 'Patient/invented-1',
    cursor: null,
    sentAt: at,
    takenAt: null,
  };
  /** Connected, with something that waits, sent by itself if anybody were signed in. */
  const rows = {
    servers: [connection],
    serverChoices: [{ person: 'me', server: known.fhirServer, automatic: true, refreshToken: null }],
    diary: seededDiary().rows.diary ?? [],
  };

  test.each([
    ['en', 'The clinic’s server', /^You are not signed in at the clinic/, /^\d+ records wait for the clinic/],
    ['es', 'El servidor de la clínica', /^No hay sesión abierta en la clínica/, /^\d+ registros esperan para la clínica/],
  ] as const)('%s: signing in, what waits, and a person of the list', async (language, title, out, waits) => {
    const { page } = await site.open();
    if (language === 'es') await page.getByRole('button', { name: 'Español' }).click();
    const faults: string[] = [];
    await page.goto(`${site.url()}#/server`);
    await heading(page, title);
    await page.getByRole('checkbox').waitFor();
    faults.push(...(await faultsOf(page, `server, ${language}`)));
    await seed(page, rows);
    await page.getByText(out).waitFor();
    faults.push(...(await faultsOf(page, `server that nobody is signed in to, ${language}`)));
    // What is long in English is long in Spanish: the screen itself is enough there.
    if (language === 'es') return expect(faults).toEqual([]);
    await page.goto(`${site.url()}#/`);
    await page.getByText(waits).waitFor();
    faults.push(...(await faultsOf(page, `start with records that wait, ${language}`)));
    await fillWithPeople(page, { people: 2, setsEach: 0, withFacts: true });
    await page.goto(`${site.url()}#/person/${person}/server`);
    await heading(page, title);
    await page.getByRole('button').first().waitFor();
    faults.push(...(await faultsOf(page, `server of a person, ${language}`)));
    await page.goto(`${site.url()}#/people`);
    faults.push(...(await faultsOf(page, `list with a server, ${language}`)));
    expect(faults).toEqual([]);
  });
});

describe.concurrent('in Spanish', () => {
  const site = siteForTests();

  test('chosen on the first screen, remembered, said to the browser, and without a fault', async () => {
    const { page } = await site.open();
    await page.getByRole('button', { name: 'Español' }).click();
    await heading(page, /^Sus ejercicios/);
    await page.reload();
    await heading(page, /^Sus ejercicios/);
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('es');
    const { rows, itemId, glideId, wrongGlideId } = seededDiary();
    await seed(page, rows);
    const faults: string[] = [];
    const screens = [
      ['', /^Sus ejercicios/],
      ['#/today', 'Hoy'],
      [`#/questions/${itemId}/left`, 'Antes de empezar'],
      [`#/today/go/${itemId}/left`, /pierna izquierda$/],
      ['#/plan', 'Su plan'],
      ['#/plan/give', 'Entregar este plan'],
      ['#/take', 'Un plan para usted'],
      ['#/progress', 'Cómo va'],
      ['#/report', 'Informe para el fisioterapeuta'],
      ['#/send', 'Enviar mi registro'],
      ['#/bring', 'Pasar a otro equipo'],
      ['#/people/bring', 'Incorporar un registro'],
      ['#/review', 'Revisión'],
      ['#/lock', 'Bloqueo con contraseña'],
      ['#/stored', 'Qué se guarda aquí'],
      [`#/set/${glideId}`, 'Deslizamientos del nervio, pierna izquierda'],
      [`#/compare/${glideId}/${wrongGlideId}`, /antes y ahora$/],
    ] as const;
    for (const [address, title] of screens) {
      await page.goto(`${site.url()}${address}`);
      await heading(page, title);
      await page.getByText('Cargando', { exact: true }).waitFor({ state: 'detached' });
      faults.push(...(await faultsOf(page, `${address || 'start'} in Spanish`)));
    }
    expect(faults).toEqual([]);
  });
});

describe.concurrent('with the keyboard alone', () => {
  const site = siteForTests();

  test('from the first screen over an example plan, questions and symptoms to a set counted by hand that the day shows as done', async () => {
    const { page, pageErrors } = await site.open();
    await heading(page, /^Your leg exercises/);
    await tabTo(page, 'link', /^Today/);
    await page.keyboard.press('Enter');
    await tabTo(page, 'button', 'Try an invented example');
    await page.keyboard.press('Space');
    await page.getByText('This is an invented example, not your plan.').waitFor();
    await page.getByText('0 of 3 done').waitFor();
    await tabTo(page, 'link', 'Start');
    await page.keyboard.press('Enter');
    await heading(page, 'Before you start');
    for (const question of await page.getByRole('group').all()) {
      await tabTo(page, 'radio', 'No');
      await page.keyboard.press('Space');
      expect(await question.getByRole('radio', { name: 'No' }).isChecked()).toBe(true);
    }
    await tabTo(page, 'button', 'Done');
    await page.keyboard.press('Enter');
    await heading(page, 'How is it now?');
    await tellStrength(page, 3);
    await tabTo(page, 'checkbox', 'Tingling');
    await page.keyboard.press('Space');
    await tabTo(page, 'button', 'Go on to the set');
    await page.keyboard.press('Enter');
    await tabTo(page, 'link', 'Count without the camera');
    await page.keyboard.press('Enter');
    await tabTo(page, 'button', /One more/);
    for (const key of ['Space', 'Enter', 'Space', 'Space']) await page.keyboard.press(key);
    await tabTo(page, 'button', 'Take one back');
    await page.keyboard.press('Space');
    await page.getByRole('button', { name: /^3 One more/ }).waitFor();
    await tabTo(page, 'button', 'Done');
    await page.keyboard.press('Enter');
    await heading(page, 'How is it after the set?');
    await tellStrength(page, 2);
    await tabTo(page, 'button', 'Keep this');
    await page.keyboard.press('Enter');
    await tabTo(page, 'link', 'Back to today');
    await page.keyboard.press('Enter');
    await heading(page, 'Today');
    await page.getByText('1 of 3 done').waitFor();
    expect(pageErrors).toEqual([]);
  });
});

/** Tells how strong it is: to the scale by Tab, on it by the arrow keys. */
async function tellStrength(page: Page, strength: number): Promise<void> {
  await tabTo(page, 'radio', '0');
  await page.keyboard.press('Space');
  for (let i = 0; i < strength; i += 1) await page.keyboard.press('ArrowRight');
  expect(await page.getByRole('radio', { name: String(strength), exact: true }).isChecked()).toBe(true);
}
