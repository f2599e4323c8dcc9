import type { Page } from 'playwright-core';

/** Of an element's box, the least share that a colour behind its text covers. Chosen: the smoothed edge of a lone 1 is below it, in each shade. */
const LEAST_SHARE = 0.15;

/** A text's contrast with what lies behind it, 1 to 21. */
interface Contrast {
  readonly ratio: number;
  /** Selector of the text. */
  readonly text: string;
}

/**
 * The lowest contrast between each text and the colours that cover some of its box, from a picture of the page; for text that axe can't judge, since it is
 * a single letter or lies over a drawing.
 */
export async function pixelContrasts(page: Page, selectors: readonly string[]): Promise<readonly Contrast[]> {
  if (selectors.length === 0) return [];
  const png = await page.screenshot({ fullPage: true, animations: 'disabled' });
  return page.evaluate(
    async ({ base64, texts, least }) => {
      const bytes = Uint8Array.from(atob(base64), (each) => each.charCodeAt(0));
      const picture = await createImageBitmap(new Blob([bytes]));
      const pen = new OffscreenCanvas(picture.width, picture.height).getContext('2d', { willReadFrequently: true });
      if (!pen) throw new Error('the contrast of pixels requires a 2D canvas');
      // WCAG 2.2: relative luminance.
      const luminance = (rgb: readonly number[]) => {
        const [r = 0, g = 0, b = 0] = rgb.map((v) => (v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4));
        return 0.2126 * r + 0.7152 * g + 0.0722 * b;
      };
      return texts.map((text) => {
        const element = document.querySelector(text);
        if (!element) throw new Error(`the contrast of pixels requires a text that is still there, got ${text}`);
        const { fill, color } = getComputedStyle(element);
        pen.fillStyle = element instanceof SVGElement ? fill : color;
        pen.fillRect(0, 0, 1, 1);
        const own = [...pen.getImageData(0, 0, 1, 1).data.slice(0, 3)];
        pen.drawImage(picture, 0, 0);
        const { left, top, width, height } = element.getBoundingClientRect();
        const { data } = pen.getImageData(left + scrollX, top + scrollY, Math.ceil(width), Math.ceil(height));
        const seen = new Map<string, number>();
        for (let i = 0; i < data.length; i += 4) {
          const name = [...data.slice(i, i + 3)].join(' ');
          seen.set(name, (seen.get(name) ?? 0) + 1);
        }
        const behind = [...seen].filter(([name, n]) => n / (data.length / 4) >= least && name !== own.join(' '));
        const ratios = behind.map(([name]) => {
          const [a, b] = [luminance(name.split(' ').map(Number)), luminance(own)];
          return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
        });
        // Nothing but the text's own colour: it can't be told from what is behind it.
        return { text, ratio: ratios.length === 0 ? 1 : Math.min(...ratios) };
      });
    },
    { base64: png.toString('base64'), texts: selectors, least: LEAST_SHARE },
  );
}
