/** Nerve glides as a patient does them: from the therapist's link to the set in front of the (fake) camera; what is said is written down and checked. */
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { Prescription } from '../../src/dose/prescription.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import type { Side } from '../../src/pose/landmarks.ts';
import { newId } from '../../src/record/new-id.ts';
import { encodePlanCode } from '../../src/record/plan-transfer.ts';
import { entryNow } from '../../src/screens/day/entry-now.ts';
import { en } from '../../src/screens/words/en.ts';
import { enGlideSet } from '../../src/screens/words/en-glide-set.ts';
import type { AngleMark } from '../../src/symptoms/angle-mark.ts';
import { deg } from '../../src/units.ts';
import { wentWell } from '../record/went-well.ts';
import { type SiteUnderTest, siteForTests } from './harness.ts';
import { saidAloud, writeDownVoice } from './heard-voice.ts';
import { pageFaults } from './page-faults.ts';
import { seed } from './seeded-diary.ts';

/** A set runs as fast as the model on a slow, shared machine allows. */
const SET_MS = 240_000;

/** A therapist's plan: glides as they are usually begun with. */
const planOf = (side: Side): Prescription => ({
  ...entryNow(),
  kind: 'prescription',
  by: { role: 'therapist', name: 'Wilma Beispiel (invented)' },
  revises: null,
  items: [startingDose('nerve-glide', newId(), [side])],
  selfChecks: { checks: [], sides: ['left', 'right'], everyDays: 7 },
});

/** Where symptoms began when the right leg was last raised. */
const marked = (angleDeg: number): AngleMark => ({
  ...entryNow(),
  kind: 'angle-mark',
  exercise: 'leg-raise',
  side: 'right',
  mark: 'first-symptom',
  trial: 1,
  angleDeg: deg(angleDeg),
  zero: 'rest',
  errorDeg: deg(3),
  method: 'followed',
  from: 'camera',
  foot: null,
  place: null,
  sessionId: newId(),
});

const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name }).waitFor();

/** From the therapist's link over today and its questions to the screen before the set, whose dose is made less. */
async function walkToGo(site: SiteUnderTest, side: Side, { fewer, marks = [] }: { fewer: number; marks?: readonly AngleMark[] }) {
  const visit = await site.open();
  const { page, context } = visit;
  await writeDownVoice(context);
  if (marks.length > 0) await seed(page, { diary: marks });
  await page.goto(`${site.url()}#/take/${wentWell(encodePlanCode(planOf(side), { named: true }))}`);
  await page.reload();
  await page.getByRole('button', { name: 'Take this plan on' }).click();
  await page.getByText('0 of 1 set done').waitFor();
  await page.getByRole('link', { name: 'Start' }).click();
  await heading(page, 'Before you start');
  for (const no of await page.getByRole('radio', { name: 'No' }).all()) await no.check();
  await page.getByRole('button', { name: 'Done' }).click();
  await heading(page, 'How is it now?');
  await page.getByRole('radio', { name: '3', exact: true }).check();
  await page.getByLabel('Tingling').check();
  await page.locator(`[data-place="calf-outer ${side}"]`).click();
  await page.getByRole('button', { name: 'Go on to the set' }).click();
  await heading(page, `Nerve glides, ${side} leg`);
  await page.getByRole('img', { name: enGlideSet.drawing }).waitFor();
  await page.getByText(enGlideSet.few).waitFor();
  await page.getByText(enGlideSet.signal(true)).waitFor();
  for (let i = 0; i < fewer; i += 1) await page.getByRole('button', { name: 'One fewer' }).click();
  return visit;
}

/** What is announced before the first movement. */
const ANNOUNCED = `${en.set.readyVoice} ${en.set.signalVoice.symptoms(true, true)}`;
const CUES: readonly string[] = [enGlideSet.cue.point, enGlideSet.cue.pull];
const isCount = (said: string) => /^\d+$/.test(said) || said === en.set.doseDone(5) || said === en.set.doseDone(4);

describe('the wrong way round', () => {
  const site = siteForTests({ camera: join('tests', 'clips', 'glide-right-tension.mp4') });

  test('a set of glides is announced, led and counted aloud, corrected once after two cycles, stored, and is the only one of the first day', async () => {
    const { page, pageErrors } = await walkToGo(site, 'right', { fewer: 5 });
    await page.getByText(enGlideSet.noLimit).waitFor();
    expect(await pageFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'Start the camera' }).click();
    await page.locator('.phase-banner', { hasText: en.set.glideWrong }).waitFor({ timeout: SET_MS });
    await page.locator('.glide-sign[data-mark="tension"]').nth(1).waitFor();
    await page.getByText(enGlideSet.mark.tension, { exact: true }).waitFor();
    expect(await pageFaults(page)).toEqual([]);
    await page.waitForURL(/#\/set\//, { timeout: SET_MS });
    const said = await saidAloud(page);
    expect(said).toContain(ANNOUNCED);
    expect(said.filter((each) => each === en.set.glideWrong)).toHaveLength(1);
    // One of the two wrong glides may have begun before the set and not count.
    const before = said.slice(said.indexOf(ANNOUNCED), said.indexOf(en.set.glideWrong)).filter(isCount);
    expect(before[0]).toBe('1');
    expect(said.filter(isCount)).toEqual(['1', '2', '3', '4', en.set.doseDone(5)]);
    expect(said.some((each) => CUES.includes(each))).toBe(true);
    // A correction stands alone: no cue in the breath after it.
    expect(CUES).not.toContain(said[said.indexOf(en.set.glideWrong) + 1]);
    expect(said.at(-1)).toBe(en.set.endedVoice(5));
    await page.goto(`${site.url()}#/today`);
    await page.getByText('1 of 1 set done').waitFor();
    await page.getByText(en.day.doneNoMore).waitFor();
    expect(await page.getByRole('link', { name: /Start|Once more/ }).count()).toBe(0);
    expect(pageErrors).toEqual([]);
  });

  test('symptoms that rise end the set with their reason, aloud and on the screen, and today offers no other one', async () => {
    const { page, pageErrors } = await walkToGo(site, 'right', { fewer: 0 });
    await page.getByRole('button', { name: 'Start the camera' }).click();
    await page.locator('.phase-banner[data-stage="counting"]').waitFor({ timeout: SET_MS });
    await page.keyboard.press('Space');
    await page.locator('.phase-banner', { hasText: en.set.finishing.symptoms }).waitFor();
    expect((await saidAloud(page)).filter((each) => each === en.set.finishing.symptoms)).toHaveLength(1);
    expect(await pageFaults(page)).toEqual([]);
    await page.waitForURL(/#\/set\//, { timeout: SET_MS });
    await page.getByRole('link', { name: 'Tell how it feels now' }).click();
    await heading(page, 'How is it after the set?');
    await page.goto(`${site.url()}#/today`);
    await page.getByText(en.day.state['symptoms-rose']).waitFor();
    expect(await page.getByRole('link', { name: /Start|Once more/ }).count()).toBe(0);
    expect(pageErrors).toEqual([]);
  });

  test('a leg above where symptoms began does not begin a set, and is asked to be lowered', async () => {
    const { page } = await walkToGo(site, 'right', { fewer: 0, marks: [marked(30)] });
    await page.getByText(/^Leg not higher than 30°, where symptoms began on /).waitFor();
    await page.getByRole('button', { name: 'Start the camera' }).click();
    await page.locator('.phase-banner', { hasText: en.set.advice['leg-too-high'] }).waitFor({ timeout: SET_MS });
    await expect.poll(() => saidAloud(page), { timeout: SET_MS }).toContain(en.set.advice['leg-too-high']);
    expect(await saidAloud(page)).not.toContain(ANNOUNCED);
  });
});

describe('as it should be', () => {
  const site = siteForTests({ camera: join('tests', 'clips', 'glide-left-sliding.mp4') });

  test('a set of slides is counted and hears no correction', async () => {
    const { page, pageErrors } = await walkToGo(site, 'left', { fewer: 6 });
    await page.getByRole('button', { name: 'Start the camera' }).click();
    await page.locator('.glide-sign[data-mark="slide"]').nth(1).waitFor({ timeout: SET_MS });
    await page.waitForURL(/#\/set\//, { timeout: SET_MS });
    const said = await saidAloud(page);
    expect(said).toContain(ANNOUNCED);
    expect(said).not.toContain(en.set.glideWrong);
    expect(said.filter(isCount)).toEqual(['1', '2', '3', en.set.doseDone(4)]);
    expect(said.at(-1)).toBe(en.set.endedVoice(4));
    expect(pageErrors).toEqual([]);
  });
});
