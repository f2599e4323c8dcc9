import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { pixelContrasts } from './pixel-contrast.ts';

/** The least a finger or an unsteady mouse hits, CSS px each way: WCAG 2.2, success criterion 2.5.5. */
const LEAST_TARGET_PX = 44;

/** The least contrast of text with what is behind it, as axe asks it where it can tell: WCAG 2.2, success criterion 1.4.3, as for small text. */
const LEAST_CONTRAST = 4.5;

/** What axe looks at. `everything`: by its own settings. `drawn`: without the style sheets' source, which is the same at every size. `contrast`: that alone. */
type Look = 'everything' | 'drawn' | 'contrast';

const AXE_OPTIONS: Readonly<Record<Look, axe.RunOptions>> = {
  everything: {},
  drawn: { preload: false },
  contrast: { preload: false, runOnly: ['color-contrast'] },
};

/** What axe finds wrong, and the text whose contrast it can't tell. */
async function axeOn(page: Page, look: Look) {
  // Evaluated by the driver: the page's own policy lets no script in.
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe.source);
  return page.evaluate(async (options) => {
    const here = globalThis as unknown as { axe: { run: (options: axe.RunOptions) => Promise<axe.AxeResults> } };
    const { violations, incomplete } = await here.axe.run({ ...options, resultTypes: ['violations', 'incomplete'] });
    const contrast = incomplete.filter(({ id }) => id === 'color-contrast').flatMap(({ nodes }) => nodes);
    return {
      violations: violations.map(
        ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map(({ target }) => target.join(' ')).join('; ')}`,
      ),
      contrastUnknown: contrast.map(({ target }) => target.join(' ')),
    };
  }, AXE_OPTIONS[look]);
}

/** Every target that can be seen, with its size; a label is part of its input's target. */
const targetsOn = (page: Page) =>
  page.evaluate(() => {
    const inSentence = (element: Element) =>
      element.tagName === 'A' &&
      [...(element.parentElement?.childNodes ?? [])].some(
        (node) => node.nodeType === Node.TEXT_NODE && /\w/.test(node.textContent ?? ''),
      );
    const every = document.querySelectorAll('a[href], button, input:not([type=hidden]), select, textarea, summary, [data-place]');
    return [...every].flatMap((element) => {
      const label = element.closest('label') ?? (element instanceof HTMLInputElement ? element.labels?.[0] : null);
      const sizes = [element, label ?? element].flatMap((each) => {
        const { width, height } = each.getBoundingClientRect();
        const seen = each.checkVisibility({ visibilityProperty: true }) && width > 1 && height > 1;
        return seen ? [{ width, height, px: Math.min(width, height) }] : [];
      });
      const size = sizes.toSorted((a, b) => b.px - a.px)[0];
      const words = (label ?? element).textContent?.trim() || element.getAttribute('aria-label');
      const name = (words || element.getAttribute('data-place') || element.tagName).slice(0, 40);
      return size && !inSentence(element) ? [{ ...size, name }] : [];
    });
  });

/** What scrolls sideways, the page or a part of it, and text that is wider than its box without being shortened on purpose. @returns one line for each */
export const tooWideOn = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const every = [document.documentElement, ...document.querySelectorAll<HTMLElement>('body *')];
    return every.flatMap((each) => {
      const { scrollWidth, clientWidth } = each;
      const { overflowX, textOverflow } = getComputedStyle(each);
      const name = `${each.tagName} ${each.className}: ${each.textContent?.slice(0, 40)}`;
      // What is typed into a field may be longer than the field, which follows it.
      if (each instanceof HTMLInputElement) return [];
      const scrolls = each === document.documentElement || /auto|scroll/.test(overflowX);
      if (scrolls) return scrollWidth > clientWidth ? [`scrolls sideways: ${name}`] : [];
      // What is a pixel wide is for those who hear the page; scrollWidth is rounded up.
      return clientWidth > 1 && scrollWidth > clientWidth + 1 && textOverflow !== 'ellipsis'
        ? [`runs over its box: ${name}`]
        : [];
    });
  });

/** A page that draws itself anew between two looks is looked at again, so often at the most. */
const MOST_LOOKS = 3;

async function axeFaults(page: Page, look: Look, looks = 1): Promise<readonly string[]> {
  const { violations, contrastUnknown } = await axeOn(page, look);
  const there = await page.evaluate((texts) => texts.every((text) => document.querySelector(text)), contrastUnknown);
  if (!there && looks < MOST_LOOKS) return axeFaults(page, look, looks + 1);
  const low = (await pixelContrasts(page, contrastUnknown)).filter(({ ratio }) => ratio < LEAST_CONTRAST);
  return [...violations, ...low.map(({ ratio, text }) => `contrast of ${ratio.toFixed(2)}: ${text}`)];
}

/** Text whose contrast is too low, as the page stands. @returns one line for each fault */
export const contrastFaults = (page: Page): Promise<readonly string[]> => axeFaults(page, 'contrast');

/** Looks at the page as it stands: axe, contrast, the size of the targets, scrolling sideways, text that runs over. @returns one line for each fault */
export async function pageFaults(page: Page, look: 'everything' | 'drawn' = 'everything'): Promise<readonly string[]> {
  const faults = await axeFaults(page, look);
  const small = (await targetsOn(page)).filter(({ px }) => px < LEAST_TARGET_PX);
  return [
    ...faults,
    ...small.map(({ width, height, name }) => `target of ${width.toFixed(1)} x ${height.toFixed(1)} px: ${name}`),
    ...(await tooWideOn(page)),
  ];
}
