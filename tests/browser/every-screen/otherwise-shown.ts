/** The page as it is shown to somebody who changed it: larger, with more space, from right to left, in few colours. */
import type { Page } from 'playwright-core';
import { tooWideOn } from '../page-faults.ts';
import { settled } from './settled.ts';

/** WCAG 2.2, success criterion 1.4.12, to its figures. */
const TEXT_SPACING = `
  * { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; }
  p { margin-block-end: 2em !important; }
`;

/** 1.4.10: 320 px wide, as 1280 px at 400 %. And a laptop's 1280 x 800 at 200 % (1.4.4). */
const ENLARGED = { 'at 320 px': { width: 320, height: 640 }, 'at 200 %': { width: 640, height: 400 } } as const;

/** Text that its box cuts off below. */
const cutOffOn = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('body *')].flatMap((each) => {
      const { overflowY } = getComputedStyle(each);
      const cuts = /hidden|clip/.test(overflowY) && each.clientHeight > 1 && each.scrollHeight > each.clientHeight + 1;
      const says = each.textContent?.trim();
      return cuts && says ? [`is cut off: ${each.tagName} ${each.className}: ${says.slice(0, 40)}`] : [];
    }),
  );

const layoutFaults = async (page: Page) => [...(await tooWideOn(page)), ...(await cutOffOn(page))];

const named = (how: string, faults: readonly string[]) => faults.map((fault) => `${how}: ${fault}`);

/** Larger than it was made for, as by the browser's zoom. */
export async function enlargedFaults(page: Page): Promise<readonly string[]> {
  const faults: string[] = [];
  for (const [how, viewport] of Object.entries(ENLARGED)) {
    await page.setViewportSize(viewport);
    await settled(page);
    faults.push(...named(how, await layoutFaults(page)));
  }
  return faults;
}

/** With wider spaces between letters, words and lines. */
export async function spacedFaults(page: Page): Promise<readonly string[]> {
  await page.evaluate((css) => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(css);
    document.adoptedStyleSheets = [sheet];
  }, TEXT_SPACING);
  await settled(page);
  const faults = await layoutFaults(page);
  await page.evaluate(() => {
    document.adoptedStyleSheets = [];
  });
  return named('with text spacing', faults);
}

/** Words beside a drawing of the body that stand on its other side now. */
const changedSides = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('.body-sides')].flatMap((sides) => {
      const [first, second] = [...sides.children].map((each) => each.getBoundingClientRect().left);
      return first !== undefined && second !== undefined && first < second
        ? []
        : ['the sides of the body are named the wrong way round'];
    }),
  );

/** Numbers without a word between them, such as 7.4° ± 1.5°, of which the first no longer stands before the last. */
const reversedFigures = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_ELEMENT);
    const faults: string[] = [];
    for (let each = walker.nextNode(); each; each = walker.nextNode()) {
      // The innermost elements that hold a whole figure; a drawing has its own direction.
      if (!(each instanceof HTMLElement) || each.childElementCount > 0 || each.closest('svg, script, style')) continue;
      const all = each.textContent ?? '';
      if (!/^\P{L}*\d\P{L}*[±−+-]\P{L}*\d\P{L}*$|^[−+-]\P{L}*\d\P{L}*$/u.test(all)) continue;
      const texts = [...each.childNodes].filter((node) => node instanceof Text && node.data.trim() !== '');
      const [first, last] = [texts[0], texts.at(-1)] as [Text | undefined, Text | undefined];
      if (!first || !last) continue;
      const boxOf = (text: Text, at: number) => {
        const range = document.createRange();
        range.setStart(text, at);
        range.setEnd(text, at + 1);
        return range.getBoundingClientRect();
      };
      const from = boxOf(first, first.data.search(/\S/));
      const to = boxOf(last, last.data.trimEnd().length - 1);
      if (from.width > 0 && from.top === to.top && from.left > to.left) faults.push(`reads backwards: ${all}`);
    }
    return faults;
  });

/** From right to left, each word in letters of that way, a third longer; figures stay. What leans to a side of the body must not change sides. */
export async function mirroredFaults(page: Page): Promise<readonly string[]> {
  await page.evaluate(() => {
    const LETTERS = 'אבגדהוזחטיכלמנסעפצקרשת';
    const texts: [Text, string][] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      if (!(node instanceof Text) || node.parentElement?.closest('svg, script, style')) continue;
      texts.push([node, node.data]);
      node.data = node.data.replace(/\p{L}+/gu, (word) =>
        Array.from(
          { length: Math.ceil((word.length * 4) / 3) },
          (_, i) => LETTERS[(word.charCodeAt(0) + i) % LETTERS.length],
        ).join(''),
      );
    }
    Object.assign(globalThis, { textsBefore: texts });
    document.documentElement.dir = 'rtl';
  });
  await settled(page);
  const faults = [...(await layoutFaults(page)), ...(await changedSides(page)), ...(await reversedFigures(page))];
  await page.evaluate(() => {
    const { textsBefore } = globalThis as unknown as { textsBefore: readonly (readonly [Text, string])[] };
    for (const [node, text] of textsBefore) node.data = text;
    document.documentElement.removeAttribute('dir');
  });
  return named('from right to left', faults);
}
