import type { Page } from 'playwright-core';

/** Where the focus came to with one press of Tab. */
interface Stop {
  /** A number of the element's own; -1 when the focus left for the page itself. */
  readonly at: number;
  readonly name: string;
  /** What is wrong with how it is seen; null: it is seen. */
  readonly unseen: string | null;
}

/**
 * Keeps how every element looks before it has the focus, and counts what Tab ought to reach: of a group of radio buttons, one. What has the focus now is
 * known from before, or not at all.
 */
const noteUnfocused = (page: Page) =>
  page.evaluate(() => {
    const ring = (element: Element) => {
      const { outlineStyle, outlineWidth, outlineColor, boxShadow } = getComputedStyle(element);
      return outlineStyle === 'none' ? boxShadow : `${outlineStyle} ${outlineWidth} ${outlineColor} ${boxShadow}`;
    };
    const here = globalThis as unknown as { unfocused?: WeakMap<Element, string> };
    const unfocused = here.unfocused ?? new WeakMap<Element, string>();
    for (const each of document.querySelectorAll('body *'))
      if (!each.matches(':focus-within') && !unfocused.has(each)) unfocused.set(each, ring(each));
    Object.assign(globalThis, { unfocused, ring });
    const reachable = [
      ...document.querySelectorAll<HTMLElement>('a[href], button, input, select, textarea, summary, [tabindex]'),
    ].filter((each) => each.tabIndex >= 0 && !each.matches(':disabled') && each.checkVisibility({ visibilityProperty: true }));
    const groups = reachable.map((each, i) =>
      each instanceof HTMLInputElement && each.type === 'radio' ? `radio ${each.name}` : String(i),
    );
    return new Set(groups).size;
  });

/** Looks at the element that has the focus. Where an input is see-through, its label shows the focus. */
const focused = (page: Page): Promise<Stop> =>
  page.evaluate(() => {
    const here = globalThis as unknown as {
      unfocused: WeakMap<Element, string>;
      ring: (element: Element) => string;
      numbers?: Map<Element, number>;
    };
    const element = document.activeElement;
    if (!element || element === document.body) return { at: -1, name: 'the page', unseen: null };
    const label = element.closest('label') ?? (element instanceof HTMLInputElement ? element.labels?.[0] : null);
    const shown = [element, label].flatMap((each) => {
      if (!each) return [];
      const { width, height } = each.getBoundingClientRect();
      return width > 1 && height > 1 && getComputedStyle(each).opacity !== '0' ? [each] : [];
    });
    const name = ((label ?? element).textContent?.trim() || element.getAttribute('aria-label') || element.tagName).slice(0, 40);
    const differs = shown.some(
      (each) => here.unfocused.has(each) && here.ring(each) !== here.unfocused.get(each) && here.ring(each) !== 'none',
    );
    // Something else may lie over it, as a button that stays in place: the middle of an edge of it at least is to be seen.
    const inView = shown.some((each) => {
      const { top, bottom, left, right } = each.getBoundingClientRect();
      const [x, y] = [(left + right) / 2, (top + bottom) / 2];
      const points = [
        [x, y],
        [x, top + 2],
        [x, bottom - 2],
        [left + 2, y],
        [right - 2, y],
      ] as const;
      return points.some(([px, py]) => {
        const hit = document.elementFromPoint(px, py);
        return hit !== null && (each.contains(hit) || hit.contains(element));
      });
    });
    const unseen = differs ? (inView ? null : 'has the focus where it is not seen') : 'looks the same with the focus';
    // Not its place: what is read out comes and goes as elements of the page, too.
    here.numbers ??= new Map();
    const at = here.numbers.get(element) ?? here.numbers.size;
    here.numbers.set(element, at);
    return { at, name, unseen };
  });

/** Presses Tab all the way round. @returns one line for each fault: a focus that isn't seen, a trap, something Tab never reaches */
export async function tabThrough(page: Page): Promise<readonly string[]> {
  const toReach = await noteUnfocused(page);
  const stops: Stop[] = [];
  let round = false;
  // Once more than there are stops, for the page itself.
  for (let i = 0; i <= toReach + 1 && !round; i += 1) {
    await page.keyboard.press('Tab');
    const stop = await focused(page);
    round = stops.some(({ at }) => at === stop.at);
    if (!round) stops.push(stop);
  }
  const reached = stops.filter(({ at }) => at >= 0);
  const unseen = stops.flatMap(({ name, unseen: why }) => (why ? [`${name}: ${why}`] : []));
  return reached.length === toReach
    ? unseen
    : [...unseen, `Tab reaches ${reached.length} of ${toReach}: ${reached.map(({ name }) => name).join(', ')}`];
}

/**
 * Presses Tab until the focus is on the element of this role and name, by the page's own tree for assistive technology.
 * Throws when the focus is not seen on the way, or never comes there.
 */
export async function tabTo(
  page: Page,
  role: 'button' | 'link' | 'radio' | 'checkbox' | 'textbox',
  name: string | RegExp,
): Promise<void> {
  const wanted = page.getByRole(role, { name, exact: typeof name === 'string' });
  await wanted.first().waitFor();
  const toReach = await noteUnfocused(page);
  for (let i = 0; i <= toReach + 1; i += 1) {
    await page.keyboard.press('Tab');
    const stop = await focused(page);
    if (stop.unseen) throw new Error(`tabTo requires a focus that is seen, got: ${stop.name} ${stop.unseen}`);
    const there = await Promise.all(
      (await wanted.all()).map((each) => each.evaluate((element) => element === document.activeElement)),
    );
    if (there.includes(true)) return;
  }
  throw new Error(`tabTo requires ${role} ${name} to be reached by Tab, not so within ${toReach + 2} presses`);
}
