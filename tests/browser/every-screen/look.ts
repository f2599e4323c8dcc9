import type { Page } from 'playwright-core';
import { tabThrough } from '../keyboard.ts';
import { contrastFaults, pageFaults } from '../page-faults.ts';
import { fewColoursFaults } from './few-colours.ts';
import { motionFaults } from './motion.ts';
import { enlargedFaults, mirroredFaults, spacedFaults } from './otherwise-shown.ts';
import type { Screen } from './screens.ts';
import { settled } from './settled.ts';
import { treeFaults } from './tree.ts';

export const SIZES = { laptop: { width: 1280, height: 800 }, phone: { width: 390, height: 844 } } as const;

/** Places of the program that were looked at, each as the part of the address after the #. */
export const walked = new Set<string>();

export interface LookOptions {
  /** False: the screen changes meanwhile. */
  readonly tab?: false;
  /** False: what is read changes meanwhile. */
  readonly tree?: false;
  /** True: the same screen in other words; what words do not change is not looked at again. */
  readonly wordsOnly?: true;
}

/** What stands before the heading can be passed with two presses of Tab at the most: no link that skips it is needed (WCAG 2.2, 2.4.1). */
const MOST_BEFORE_HEADING = 2;

/** Where the focus is when a screen has been opened: on its heading, from which Tab goes on to what the screen is for. */
const openedFaults = (page: Page): Promise<readonly string[]> =>
  page.evaluate((most) => {
    const heading = document.querySelector('h1');
    if (!heading) return ['has no heading'];
    const before = [...document.querySelectorAll('a[href], button, input')].filter(
      (each) => each.compareDocumentPosition(heading) & Node.DOCUMENT_POSITION_FOLLOWING && each.checkVisibility(),
    );
    return [
      ...(document.activeElement === heading
        ? []
        : [`the focus is not on the heading but on ${document.activeElement?.tagName}`]),
      ...(before.length > most ? [`${before.length} controls stand before the heading`] : []),
      ...(document.title.includes(' · ') ? [] : [`the window is called ${document.title}`]),
    ];
  }, MOST_BEFORE_HEADING);

/** Looks at a screen as it stands, with all that folds unfolded. @returns one line for each fault */
export async function faultsOf(
  page: Page,
  screen: string,
  { tab, tree, wordsOnly }: LookOptions = {},
): Promise<readonly string[]> {
  walked.add(new URL(page.url()).hash.slice(1) || '/');
  const faults: string[] = [];
  const add = (how: string, found: readonly string[]) => faults.push(...found.map((fault) => `${screen}, ${how}: ${fault}`));
  await page.evaluate(() => {
    for (const folded of document.querySelectorAll('details')) folded.open = true;
    // What was pressed last has the focus already: its look without it is to be known too.
    if (document.activeElement instanceof HTMLButtonElement) document.activeElement.blur();
  });

  await page.setViewportSize(SIZES.laptop);
  await settled(page);
  add('laptop', await pageFaults(page));
  if (!wordsOnly) {
    if (tree !== false) add('laptop', await treeFaults(page, screen));
    await page.emulateMedia({ colorScheme: 'dark' });
    add('dark', await contrastFaults(page));
    add('laptop', await motionFaults(page));
    add('laptop', await fewColoursFaults(page));
    if (tab !== false) add('laptop', await tabThrough(page));
  }

  await page.setViewportSize(SIZES.phone);
  await settled(page);
  add('phone', await pageFaults(page, 'drawn'));
  if (tab !== false) add('phone', await tabThrough(page));
  add('phone', await spacedFaults(page));
  if (!wordsOnly) add('phone', await mirroredFaults(page));
  add('enlarged', await enlargedFaults(page));
  return faults;
}

/** Opens each screen in turn, as a link within the program does, and looks at it. @param loading what stands there while a screen is loaded */
export async function walk(
  page: Page,
  site: string,
  screens: readonly Screen[],
  { loading = 'Loading', ...options }: LookOptions & { readonly loading?: string } = {},
): Promise<readonly string[]> {
  const faults: string[] = [];
  for (const { name, address, heading, text } of screens) {
    await page.goto(`${site}${address}`);
    walked.add(address.slice(1) || '/');
    await page.getByRole('heading', { level: 1, name: heading }).waitFor();
    if (text !== undefined) await page.getByText(text).first().waitFor();
    await page.getByText(loading, { exact: true }).first().waitFor({ state: 'detached' });
    faults.push(...(await openedFaults(page)).map((fault) => `${name}, opened: ${fault}`));
    faults.push(...(await faultsOf(page, name, options)));
  }
  return faults;
}
