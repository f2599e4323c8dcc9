import type { Page } from 'playwright-core';
import { contrastFaults } from '../page-faults.ts';

/** The least contrast of a drawing's lines with what is behind it: WCAG 2.2, success criterion 1.4.11. */
const LEAST = 3;

/**
 * Looks at the page in the system's few colours (`forced-colors`), on black and on white: each line of a drawing is seen, or is a gap in one that is; each bar or
 * box that is only filled is seen; what is chosen looks otherwise than what is not.
 * @returns one line for each fault
 */
export async function fewColoursFaults(page: Page): Promise<readonly string[]> {
  const faults: string[] = [];
  for (const colorScheme of ['dark', 'light'] as const) {
    await page.emulateMedia({ colorScheme, forcedColors: 'active' });
    const found = await page.evaluate((least) => {
      const pen = new OffscreenCanvas(1, 1).getContext('2d', { willReadFrequently: true });
      if (!pen) throw new Error('the colours of a page require a 2D canvas');
      const known = new Map<string, number>();
      const luminance = (colour: string): number => {
        const before = known.get(colour);
        if (before !== undefined) return before;
        pen.clearRect(0, 0, 1, 1);
        pen.fillStyle = getComputedStyle(document.body).backgroundColor;
        pen.fillRect(0, 0, 1, 1);
        pen.fillStyle = colour;
        pen.fillRect(0, 0, 1, 1);
        const [r = 0, g = 0, b = 0] = [...pen.getImageData(0, 0, 1, 1).data].map((v) =>
          v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4,
        );
        known.set(colour, 0.2126 * r + 0.7152 * g + 0.0722 * b);
        return 0.2126 * r + 0.7152 * g + 0.0722 * b;
      };
      const behind = luminance('transparent');
      const contrast = (colour: string) => {
        const [a, b] = [luminance(colour), behind];
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
      };
      const seen = (each: Element) => each.checkVisibility({ visibilityProperty: true, opacityProperty: true });
      const named = (each: Element) =>
        `${each.tagName.toLowerCase()}.${each.getAttribute('class') ?? ''} in ${each.parentElement?.closest('[class]')?.getAttribute('class')}`;
      const faults: string[] = [];
      for (const svg of document.querySelectorAll('svg')) {
        if (!seen(svg) || getComputedStyle(svg).forcedColorAdjust === 'none') continue;
        // On something filled, its colour is the page's: a sign on a button. Text there is looked at by its contrast.
        let around = svg.parentElement;
        while (around && contrast(getComputedStyle(around).backgroundColor) < least) around = around.parentElement;
        if (around) continue;
        let shown = false;
        for (const shape of svg.querySelectorAll('path, line, circle, rect, ellipse, polyline, polygon, text')) {
          if (!seen(shape) || shape.closest('defs, clipPath, mask')) continue;
          const { fill, stroke, fillOpacity, strokeOpacity } = getComputedStyle(shape);
          const paints = [fill, stroke].filter((paint, i) => paint !== 'none' && (i === 0 ? fillOpacity : strokeOpacity) !== '0');
          const contrasts = paints.filter((paint) => !paint.startsWith('url')).map(contrast);
          shown ||= contrasts.some((ratio) => ratio >= least);
          // A shape of the page's own colour is a gap in another; one in between is hardly seen.
          const best = Math.max(1, ...contrasts);
          if (best > 1.1 && best < least) faults.push(`contrast of ${best.toFixed(1)}: ${named(shape)}`);
        }
        if (!shown && svg.childElementCount > 0) faults.push(`nothing of it is seen: ${named(svg)}`);
      }
      // Bars and dots made of a background alone.
      for (const each of document.querySelectorAll<HTMLElement>('body span, body i, body div')) {
        const { width, height } = each.getBoundingClientRect();
        if (each.childElementCount > 0 || each.textContent || width < 2 || height < 2 || !seen(each)) continue;
        const style = getComputedStyle(each);
        if (/, 0\)$/.test(style.backgroundColor) && style.backgroundImage === 'none') continue;
        const edged = (['Top', 'Bottom', 'Left', 'Right'] as const).some(
          (side) => style[`border${side}Width`] !== '0px' && style[`border${side}Style`] !== 'none',
        );
        const filled = contrast(style.backgroundColor) >= least || style.backgroundImage !== 'none';
        if (!edged && !filled) faults.push(`nothing of it is seen: ${named(each)}`);
      }
      // What is chosen and what is not, each in its group.
      const look = (input: HTMLInputElement) => {
        if (getComputedStyle(input).appearance !== 'none' && getComputedStyle(input).opacity !== '0' && input.clientWidth > 4)
          return null;
        const label = input.closest('label') ?? input.labels?.[0];
        if (!label) return null;
        const of = (pseudo?: string) => {
          const s = getComputedStyle(label, pseudo);
          return [
            s.borderWidth,
            s.borderStyle,
            s.borderColor,
            s.outlineStyle,
            s.outlineWidth,
            s.backgroundColor,
            s.color,
            s.fontWeight,
            s.content,
          ];
        };
        const signs = [...label.querySelectorAll('*')].map((each) => {
          const s = getComputedStyle(each);
          return [seen(each), s.borderWidth, s.borderColor, s.backgroundColor, s.fill, s.stroke, s.strokeWidth, s.outlineStyle];
        });
        return JSON.stringify([of(), of('::before'), of('::after'), signs]);
      };
      for (const checked of document.querySelectorAll<HTMLInputElement>(
        'input[type=radio]:checked, input[type=checkbox]:checked',
      )) {
        const group = checked.closest('fieldset, [role=radiogroup]');
        const other = group?.querySelector<HTMLInputElement>(`input[type=${checked.type}]:not(:checked):enabled`);
        const mine = look(checked);
        if (other && mine !== null && mine === look(other))
          faults.push(`chosen looks like not chosen: ${checked.name} ${checked.value}`);
      }
      return faults;
    }, LEAST);
    faults.push(
      ...[...found, ...(colorScheme === 'dark' ? await contrastFaults(page) : [])].map(
        (fault) => `in few colours, ${colorScheme}: ${fault}`,
      ),
    );
  }
  await page.emulateMedia({ colorScheme: 'light', forcedColors: null });
  return [...new Set(faults)];
}
