import { describe, expect, test } from 'vitest';
import { distance, type RgbaPicture, type Spot } from '../../src/stickers/rgba-picture.ts';
import { rimOf } from '../../src/stickers/rim.ts';
import { BLUE, type Disc, draw, PINK, type Rgb, YELLOW } from './drawn-picture.ts';

const DARK_SKIN: Rgb = [110, 78, 60];
const SIZE = { width: 60, height: 60, ground: DARK_SKIN };
const disc = (at: Spot, colour: Rgb, radiusPx = 5.7): readonly Disc[] => [{ at, radiusPx, colour }];

/** As packed video has it: brightness of one picture, the colour of another for two by two pixels. */
function packed(brightness: RgbaPicture, colour: RgbaPicture): RgbaPicture {
  const { width, height } = brightness;
  const data = new Uint8ClampedArray(brightness.data.length).fill(255);
  const at = ({ data: d }: RgbaPicture, i: number): Rgb => [d[4 * i] as number, d[4 * i + 1] as number, d[4 * i + 2] as number];
  const luma = ([r, g, b]: Rgb) => 0.299 * r + 0.587 * g + 0.114 * b;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      const corner = (y - (y % 2)) * width + x - (x % 2);
      const four = [corner, corner + 1, corner + width, corner + width + 1].map((k) => at(colour, k));
      const mean = [0, 1, 2].map((c) => four.reduce((sum, rgb) => sum + (rgb[c] as number) / 4, 0)) as unknown as Rgb;
      for (let c = 0; c < 3; c++) data[4 * i + c] = luma(at(brightness, i)) + (mean[c] as number) - luma(mean);
    }
  }
  return { width, height, data };
}

describe('a rim in brightness', () => {
  const truly = { x: 30.3, y: 29.6 };

  test.each([
    ['yellow', YELLOW],
    ['pink', PINK],
  ])('tells the centre where the colour has been left behind: %s', (_, sticker) => {
    const behind = { x: truly.x + 0.5, y: truly.y + 0.8 };
    const picture = packed(
      draw({ ...SIZE, discs: disc(truly, sticker), noise: 3 }),
      draw({ ...SIZE, discs: disc(behind, sticker) }),
    );
    const rim = rimOf(picture, behind, 12.4, 5.7);
    expect(distance(rim?.at as Spot, truly)).toBeLessThan(sticker === YELLOW ? 0.15 : 0.45);
  });

  test('is found with its radius when that is not known yet', () => {
    const rim = rimOf(draw({ ...SIZE, discs: disc(truly, YELLOW), noise: 3 }), truly, 12.4, null);
    expect(rim?.radiusPx).toBeGreaterThan(5.5);
    expect(rim?.radiusPx).toBeLessThan(5.9);
  });

  test('shows on three sides and tells all the same: the fourth is as bright as the sticker', () => {
    const ground: Disc = { at: { x: 30.3 - 60.6, y: 29.6 }, radiusPx: 58, colour: [196, 196, 196] };
    const picture = draw({ ...SIZE, discs: [ground, ...disc(truly, YELLOW)], noise: 3 });
    const off = { x: truly.x + 0.4, y: truly.y - 0.4 };
    expect(distance(rimOf(picture, off, 12.4, 5.7)?.at as Spot, truly)).toBeLessThan(0.2);
  });

  test('of a sticker as bright as the skin is none', () => {
    const dull: Rgb = [86, 86, 86];
    const picture = draw({ ...SIZE, ground: dull, discs: disc(truly, [40, 86, 206]) });
    expect(rimOf(picture, truly, 11.4, 5.7)).toBeNull();
    expect(rimOf(draw({ ...SIZE, discs: disc({ x: 2, y: 2 }, BLUE) }), { x: 2, y: 2 }, 11.4, 5.7)).toBeNull();
  });
});
