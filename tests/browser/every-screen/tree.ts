import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';

const TREES = join(import.meta.dirname, '..', 'trees');

/** Set to `write`: the trees are written as they are now, to be read in the change. Otherwise a tree that differs is a fault. */
const WRITES = process.env.EVENSIDE_TREES === 'write';

/** What is another in every run: ids, a plan's code, amounts on this disk. */
const OTHER_EVERY_TIME = [
  [/[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}/g, 'ID'],
  [/(#\/take\/)[\w-]{20,}/g, '$1CODE'],
  [/127\.0\.0\.1:\d+/g, 'SITE'],
  [/http:\/\/(127\.0\.0\.1|localhost):\d+/g, 'SITE'],
  [/\d+([.,]\d+)? [kMG]B/g, 'AMOUNT'],
] as const;

/** What a control has just read out stands at the page's end for some seconds. */
const JUST_SAID = /^- log(: .*)?\n?/gm;

/** The title of the window and the page's tree for assistive technology: roles, names, states, what is read. */
async function treeOf(page: Page): Promise<string> {
  const body = await page.locator('body').ariaSnapshot();
  const tree = `title: ${await page.title()}\n${body.replaceAll(JUST_SAID, '')}\n`;
  return OTHER_EVERY_TIME.reduce((text, [what, name]) => text.replaceAll(what, name), tree);
}

/** The first line that differs, with what stands there now. */
function firstDifference(kept: string, now: string): string {
  const [before, after] = [kept.split('\n'), now.split('\n')];
  const at = after.findIndex((line, i) => line !== before[i]);
  const line = at < 0 ? after.length : at;
  return `line ${line + 1} was «${before[line]?.trim() ?? ''}» and is «${after[line]?.trim() ?? ''}»`;
}

/** Compares the page's tree with the kept one of this name. @returns one line for each fault */
export async function treeFaults(page: Page, name: string): Promise<readonly string[]> {
  const file = join(TREES, `${name}.txt`);
  const now = await treeOf(page);
  if (WRITES) {
    mkdirSync(TREES, { recursive: true });
    writeFileSync(file, now);
    return [];
  }
  if (!existsSync(file)) return [`there is no tests/browser/trees/${name}.txt; EVENSIDE_TREES=write writes it`];
  const kept = readFileSync(file, 'utf8');
  return kept === now ? [] : [`reads otherwise than tests/browser/trees/${name}.txt: ${firstDifference(kept, now)}`];
}
