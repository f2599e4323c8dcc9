/** A day of each of the two who use the program, with the keyboard alone. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { siteForTests } from './harness.ts';
import { tabTo } from './keyboard.ts';

const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name }).waitFor();

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
    await page.getByText('0 of 3 sets done').waitFor();
    await tabTo(page, 'link', /^Start: /);
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
    await page.getByText('1 of 3 sets done').waitFor();
    expect(pageErrors).toEqual([]);
  });

  test('a therapist adds a person, gives them a plan, and reads their review and report', async () => {
    const { page, pageErrors } = await site.open();
    await heading(page, /^Your leg exercises/);
    await tabTo(page, 'link', /^People/);
    await page.keyboard.press('Enter');
    await heading(page, 'People');
    await tabTo(page, 'link', 'Add a person');
    await page.keyboard.press('Enter');
    await heading(page, 'A new person');
    await tabTo(page, 'textbox', 'Name or code');
    await page.keyboard.type('Invented 12');
    await tabTo(page, 'button', 'Keep');
    await page.keyboard.press('Enter');
    await heading(page, 'Invented 12');
    await tabTo(page, 'link', /^Plan/);
    await page.keyboard.press('Enter');
    await heading(page, 'Plan for Invented 12');
    await tabTo(page, 'button', 'Save this plan');
    await page.keyboard.press('Enter');
    await page.waitForURL(/#\/person\/[^/]+(\/today|\/plan\/give)?\/?$/);
    await heading(page, /./);
    for (const [link, title] of [
      [/^Review/, 'Review'],
      [/^Report/, 'Report for the therapist'],
    ] as const) {
      await page.goto(`${page.url().replace(/(#\/person\/[^/]+).*$/, '$1')}`);
      await heading(page, 'Invented 12');
      await tabTo(page, 'link', link);
      await page.keyboard.press('Enter');
      await heading(page, title);
      // The focus is not lost on the way: Tab goes on from the heading.
      expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('H1');
    }
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
