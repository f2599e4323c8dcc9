/** The passphrase lock in a real browser: its own WebCrypto, its own database, its own locks between tabs. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { siteForTests } from './harness.ts';
import { tabThrough } from './keyboard.ts';
import { pageFaults } from './page-faults.ts';
import { seed, seededDiary } from './seeded-diary.ts';

const site = siteForTests();

const PASSPHRASE = 'ten grey herons by the weir';
const OTHER = 'nine green frogs on a stone';

const SIZES = [
  { width: 1280, height: 800 },
  { width: 390, height: 844 },
] as const;

const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name }).waitFor();
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();

/** Opens the app with some days of an invented person in it. */
async function seeded(): Promise<Page> {
  const { page } = await site.open();
  await seed(page, seededDiary().rows);
  return page;
}

async function turnOn(page: Page, passphrase = PASSPHRASE): Promise<void> {
  await page.goto(`${site.url()}#/lock`);
  await heading(page, 'Passphrase lock');
  await page.getByLabel('Passphrase', { exact: true }).fill(passphrase);
  await page.getByLabel('The same once more').fill(passphrase);
  await press(page, 'Turn the lock on');
  await page.getByText('The lock is on.').waitFor();
}

async function unlock(page: Page, passphrase: string): Promise<void> {
  await page.getByLabel('Passphrase', { exact: true }).fill(passphrase);
  await press(page, 'Unlock');
}

/** All that lies in the database, every row and every byte of it, as one text. */
const everythingIn = (page: Page): Promise<string> =>
  page.evaluate(async () => {
    const answer = <T>(request: IDBRequest<T>) =>
      new Promise<T>((done, failed) => {
        request.onsuccess = () => done(request.result);
        request.onerror = () => failed(request.error);
      });
    const db = await answer(indexedDB.open('evenside'));
    const texts: string[] = [];
    for (const name of db.objectStoreNames) {
      const rows: unknown[] = await answer(db.transaction(name).objectStore(name).getAll());
      // Bytes as text, and the parts of a row in one order.
      const legible = (_: string, value: unknown) => {
        if (value instanceof Uint8Array) return Array.from(value, (byte) => String.fromCharCode(byte)).join('');
        if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
        return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
      };
      texts.push(name, JSON.stringify(rows, legible));
    }
    db.close();
    return texts.join('\n');
  });

const WORDS = ['foot-tap', 'leg-raise', 'tingling', 'calf-outer', 'Wilma Beispiel', 'red-flags', 'peakDeg', 'prescription'];

/** Both sizes, dark and light. @returns one line for each fault */
async function faultsOf(page: Page, screen: string): Promise<readonly string[]> {
  const faults: string[] = [];
  await page.evaluate(() => {
    for (const folded of document.querySelectorAll('details')) folded.open = true;
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
  });
  for (const viewport of SIZES) {
    await page.setViewportSize(viewport);
    for (const colorScheme of ['dark', 'light'] as const) {
      await page.emulateMedia({ colorScheme });
      faults.push(...(await pageFaults(page)).map((fault) => `${screen}, ${viewport.width}, ${colorScheme}: ${fault}`));
    }
    faults.push(...(await tabThrough(page)).map((fault) => `${screen}, ${viewport.width}: ${fault}`));
  }
  return faults;
}

test('turned on, it hides everything from whoever looks into the database, and opens with its passphrase alone', async () => {
  const page = await seeded();
  const plain = await everythingIn(page);
  expect(WORDS.filter((word) => !plain.includes(word))).toEqual([]);
  await turnOn(page);
  const sealed = await everythingIn(page);
  expect([...WORDS, PASSPHRASE].filter((word) => sealed.includes(word))).toEqual([]);

  await page.goto(site.url());
  await page.reload();
  await heading(page, 'Evenside is locked');
  expect(await page.getByText('Foot taps').count()).toBe(0);
  await unlock(page, OTHER);
  await page.getByText('This is not the passphrase.').waitFor();
  await page.goto(`${site.url()}#/progress`);
  await heading(page, 'Evenside is locked');
  await unlock(page, PASSPHRASE);
  await heading(page, 'How it is going');
  await page.getByText('Foot taps, left leg').first().waitFor();
  // What is written while it is unlocked is sealed too.
  await page.goto(`${site.url()}#/count/foot-tap/left`);
  await page.getByRole('button', { name: /One more/ }).click();
  await page.getByRole('button', { name: /One more/ }).click();
  const before = (await everythingIn(page)).length;
  await press(page, 'Done');
  await heading(page, 'How is it after the set?');
  const after = await everythingIn(page);
  expect(after.length).toBeGreaterThan(before);
  expect([...WORDS, 'hand-set', 'by-hand'].filter((word) => after.includes(word))).toEqual([]);
});

test('another passphrase takes the place of the first; turned off, all is there as before', async () => {
  const page = await seeded();
  const before = await everythingIn(page);
  await turnOn(page);
  await page.getByText('Change the passphrase').first().click();
  await page.getByLabel('Passphrase until now').fill(PASSPHRASE);
  await page.getByLabel('New passphrase').fill(OTHER);
  await page.getByLabel('The same once more').fill(OTHER);
  await press(page, 'Change the passphrase');
  await page.getByText('The new passphrase holds from now on.').waitFor();
  await press(page, 'Lock now');
  await heading(page, 'Evenside is locked');
  await unlock(page, PASSPHRASE);
  await page.getByText('This is not the passphrase.').waitFor();
  await unlock(page, OTHER);
  await page.getByText('The lock is on.').waitFor();
  await page.getByText('Turn the lock off').first().click();
  await page.getByLabel('Passphrase', { exact: true }).fill(OTHER);
  await press(page, 'Turn the lock off');
  await page.getByRole('button', { name: 'Turn the lock on' }).waitFor();
  expect(await everythingIn(page)).toBe(before);
});

test('other tabs keep it from being turned on, and lock when it is locked in one', async () => {
  const page = await seeded();
  const other = await page.context().newPage();
  await other.goto(site.url());
  await other
    .getByText(/^Foot taps, left/)
    .first()
    .waitFor();
  await page.goto(`${site.url()}#/lock`);
  await page.getByLabel('Passphrase', { exact: true }).fill(PASSPHRASE);
  await page.getByLabel('The same once more').fill(PASSPHRASE);
  await press(page, 'Turn the lock on');
  await page.getByText('Evenside is open in other tabs.').waitFor();
  await other.close();
  await press(page, 'Turn the lock on');
  await page.getByText('The lock is on.').waitFor();
  const later = await page.context().newPage();
  await later.goto(site.url());
  await heading(later, 'Evenside is locked');
  await unlock(later, PASSPHRASE);
  await later
    .getByText(/^Foot taps, left/)
    .first()
    .waitFor();
  await press(page, 'Lock now');
  await heading(page, 'Evenside is locked');
  await heading(later, 'Evenside is locked');
});

test('who forgot the passphrase can erase all of it, after typing a word, and begins anew', async () => {
  const page = await seeded();
  await turnOn(page);
  await press(page, 'Lock now');
  await heading(page, 'Evenside is locked');
  await press(page, 'I forgot it');
  await page.getByText(/^Nobody can open these records without the passphrase, not even we\./).waitFor();
  const erase = page.getByRole('button', { name: 'Erase everything' });
  expect(await erase.isDisabled()).toBe(true);
  await page.getByLabel(/type ERASE/).fill('eras');
  expect(await erase.isDisabled()).toBe(true);
  await page.getByLabel(/type ERASE/).fill('erase');
  await erase.click();
  await heading(page, 'Everything is deleted');
  await press(page, 'Start again');
  await heading(page, /^Your leg exercises/);
  await page.getByText('Your sets will be listed here. They stay on this machine.').waitFor();
  const left = await everythingIn(page);
  expect(WORDS.filter((word) => left.includes(word))).toEqual([]);
  expect(left).toContain('lock\n[]');
});

test('its screens have no fault that axe knows, large targets, nothing sideways, and all of it is reached by Tab', async () => {
  const page = await seeded();
  await page.goto(`${site.url()}#/lock`);
  await heading(page, 'Passphrase lock');
  const faults = [...(await faultsOf(page, 'off'))];
  await turnOn(page);
  faults.push(...(await faultsOf(page, 'on')));
  await press(page, 'Lock now');
  await heading(page, 'Evenside is locked');
  await unlock(page, OTHER);
  await page.getByText('This is not the passphrase.').waitFor();
  await press(page, 'I forgot it');
  faults.push(...(await faultsOf(page, 'locked')));
  await press(page, 'Español');
  await heading(page, 'Evenside está bloqueado');
  faults.push(...(await faultsOf(page, 'locked in Spanish')));
  expect(faults).toEqual([]);
});
