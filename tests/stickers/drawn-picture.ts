import { uniformFrom } from '../../src/flow/prng.ts';
import type { RgbaPicture, Spot } from '../../src/stickers/rgba-picture.ts';

export type Rgb = readonly [number, number, number];

/** Made-up colours; skin and walls are dull, stickers vivid. */
export const SKIN: Rgb = [196, 150, 122];
export const WALL: Rgb = [150, 148, 140];
export const GREEN: Rgb = [30, 190, 80];
export const PINK: Rgb = [235, 50, 150];
export const BLUE: Rgb = [35, 90, 220];
export const YELLOW: Rgb = [235, 200, 30];
/** Of nearly the sticker's hue, but duller: a leaf, a curtain. */
export const DULL_GREEN: Rgb = [110, 150, 110];
export const RED_SKIN: Rgb = [205, 140, 112];

export interface Disc {
  readonly at: Spot;
  readonly radiusPx: number;
  readonly colour: Rgb;
  /** How far it moves while the shutter is open, px; its `at` is the middle of the way. */
  readonly blur?: Spot;
}

export interface Scene {
  readonly width: number;
  readonly height: number;
  readonly ground?: Rgb;
  /** Drawn in order, later ones in front. */
  readonly discs: readonly Disc[];
  /** Standard deviation of the noise of each channel, grey levels. */
  readonly noise?: number;
  /** Everything is this many times as bright. */
  readonly light?: number;
  /** The light falls by this share from the left to the right edge. */
  readonly gradient?: number;
  readonly seed?: number;
}

/** Noise of standard deviation 1: sums of three uniform numbers, near enough to a normal distribution. */
export const GRAIN = (() => {
  const random = uniformFrom(99);
  return Float32Array.from({ length: 1_000_003 }, () => 2 * (random() + random() + random() - 1.5));
})();

/** Steps in which a moving disc is drawn. */
const BLUR_STEPS = 8;

/** Draws discs with soft edges (a pixel's share of a disc), light and noise. Pixel centres lie on whole numbers. */
export function draw(scene: Scene): RgbaPicture {
  const { width, height, ground = SKIN, discs, noise = 0, light = 1, gradient = 0, seed = 1 } = scene;
  const colour = new Float32Array(3 * width * height);
  for (let i = 0; i < width * height; i++) colour.set(ground, 3 * i);
  for (const disc of discs) paint(colour, width, height, disc);
  const data = new Uint8ClampedArray(4 * width * height);
  // Each seed begins elsewhere in one long list.
  let at = (seed * 7919) % GRAIN.length;
  for (let i = 0; i < width * height; i++) {
    const lit = light * (1 - (gradient * (i % width)) / width);
    for (let c = 0; c < 3; c++) {
      data[4 * i + c] = (colour[3 * i + c] as number) * lit + noise * (GRAIN[at] as number);
      at = at + 1 === GRAIN.length ? 0 : at + 1;
    }
    data[4 * i + 3] = 255;
  }
  return { width, height, data };
}

function paint(colour: Float32Array, width: number, height: number, { at, radiusPx, colour: own, blur }: Disc): void {
  const steps = blur ? BLUR_STEPS : 1;
  const dx = blur?.x ?? 0;
  const dy = blur?.y ?? 0;
  const reach = radiusPx + Math.max(Math.abs(dx), Math.abs(dy)) / 2 + 2;
  for (let y = Math.max(0, Math.floor(at.y - reach)); y <= Math.min(height - 1, at.y + reach); y++) {
    for (let x = Math.max(0, Math.floor(at.x - reach)); x <= Math.min(width - 1, at.x + reach); x++) {
      let share = 0;
      for (let k = 0; k < steps; k++) {
        const along = (k + 0.5) / steps - 0.5;
        const far = Math.hypot(x - at.x - dx * along, y - at.y - dy * along);
        share += Math.min(1, Math.max(0, radiusPx - far + 0.5)) / steps;
      }
      for (let c = 0; c < 3; c++) {
        const i = 3 * (y * width + x) + c;
        colour[i] = (colour[i] as number) * (1 - share) + (own[c] as number) * share;
      }
    }
  }
}
