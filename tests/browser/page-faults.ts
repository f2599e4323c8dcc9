import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { type Contrast, pixelContrasts } from './pixel-contrast.ts';

/** The least a finger or an unsteady mouse hits, CSS px each way: WCAG 2.2, success criterion 2.5.5. */
const LEAST_TARGET_PX = 44;

/** The least contrast of text with what is behind it: WCAG 2.2, success criterion 1.4.3, as for small text. */
const LEAST_CONTRAST = 4.5;

export interface Looked {
  /** One line for each fault. */
  readonly faults: readonly string[];
  /** Null on a page where none was measured. */
  readonly lowestContrast: Contrast | null;
  /** The shorter side of the smallest target, CSS px; links inside a sentence aside. */
  readonly smallestTarget: { readonly px: number; readonly name: string } | null;
}

async function axeOn(page: Page) {
  // Evaluated by the driver: the page's own policy lets no script in.
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const here = globalThis as unknown as { axe: { run: () => Promise<axe.AxeResults> } };
    const { violations, incomplete, passes } = await here.axe.run();
    const contrastOf = (results: readonly axe.Result[]) =>
      results.filter(({ id }) => id === 'color-contrast').flatMap(({ nodes }) => nodes);
    const measured = contrastOf(passes).flatMap(({ any, target }) => {
      const ratio: unknown = any[0]?.data?.contrastRatio;
      return typeof ratio === 'number' && ratio > 0 ? [{ ratio, text: target.join(' ') }] : [];
    });
    return {
      violations: violations.map(
        ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map(({ target }) => target.join(' ')).join('; ')}`,
      ),
      contrastUnknown: contrastOf(incomplete).map(({ target }) => target.join(' ')),
      measured,
    };
  });
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

/** What scrolls sideways, the page or a part of it, and text that is wider than its box without being shortened on purpose. */
const tooWideOn = (page: Page) =>
  page.evaluate(() => {
    const every = [document.documentElement, ...document.querySelectorAll<HTMLElement>('body *')];
    return every.flatMap((each) => {
      const { scrollWidth, clientWidth } = each;
      const { overflowX, textOverflow } = getComputedStyle(each);
      const name = `${each.tagName} ${each.className}: ${each.textContent?.slice(0, 40)}`;
      const scrolls = each === document.documentElement || /auto|scroll/.test(overflowX);
      if (scrolls) return scrollWidth > clientWidth ? [`scrolls sideways: ${name}`] : [];
      // What is a pixel wide is for those who hear the page; scrollWidth is rounded up.
      return clientWidth > 1 && scrollWidth > clientWidth + 1 && textOverflow !== 'ellipsis'
        ? [`runs over its box: ${name}`]
        : [];
    });
  });

/** Looks at the page as it stands: axe, contrast, the size of the targets, scrolling sideways, text that runs over. */
export async function lookAt(page: Page): Promise<Looked> {
  const { violations, contrastUnknown, measured } = await axeOn(page);
  const contrasts = [...measured, ...(await pixelContrasts(page, contrastUnknown))].toSorted((a, b) => a.ratio - b.ratio);
  const targets = (await targetsOn(page)).toSorted((a, b) => a.px - b.px);
  return {
    faults: [
      ...violations,
      ...contrasts
        .filter(({ ratio }) => ratio < LEAST_CONTRAST)
        .map(({ ratio, text }) => `contrast of ${ratio.toFixed(2)}: ${text}`),
      ...targets
        .filter(({ px }) => px < LEAST_TARGET_PX)
        .map(({ width, height, name }) => `target of ${width.toFixed(1)} x ${height.toFixed(1)} px: ${name}`),
      ...(await tooWideOn(page)),
    ],
    lowestContrast: contrasts[0] ?? null,
    smallestTarget: targets[0] ?? null,
  };
}
