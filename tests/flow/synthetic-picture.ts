import type { Grey } from '../../src/flow/grey.ts';
import { movedPoint, type PlaneMotion } from '../../src/flow/plane-motion.ts';
import { uniformFrom } from '../../src/flow/prng.ts';
import { deg, px, ratio } from '../../src/units.ts';

/** A grey picture as a formula: it can be read anywhere between pixels, so a moved copy is exact and not resampled. */
export type Surface = (x: number, y: number) => number;

/** Band-limited noise: plane waves 7 to 45 px long in all directions, about mean 125, standard deviation 27. */
export function texture(seed: number): Surface {
  const random = uniformFrom(seed);
  const waves = Array.from({ length: 24 }, () => {
    const direction = 2 * Math.PI * random();
    const number = (2 * Math.PI) / (7 + 38 * random() ** 1.5);
    return { kx: number * Math.cos(direction), ky: number * Math.sin(direction), phase: 2 * Math.PI * random() };
  });
  return (x, y) => {
    let sum = 0;
    for (const { kx, ky, phase } of waves) sum += Math.cos(kx * x + ky * y + phase);
    return 125 + 7.8 * sum;
  };
}

/** Soft round blobs on a plain ground, like marks on skin. */
export function blobs(seed: number, size: number): Surface {
  const random = uniformFrom(seed);
  const spots = Array.from({ length: Math.round(size / 3) }, () => ({
    x: size * random(),
    y: size * random(),
    r: 2.5 + 4 * random(),
    height: 90 * random() - 45,
  }));
  return (x, y) => spots.reduce((sum, s) => sum + s.height * Math.exp(-((x - s.x) ** 2 + (y - s.y) ** 2) / (2 * s.r * s.r)), 120);
}

/** A leg-like band with soft edges and a faint texture, along a direction. */
export function band(seed: number, x0: number, y0: number, halfWidth: number): Surface {
  const inner = texture(seed);
  return (x, y) => {
    const across = Math.abs((y - y0) * Math.cos(0.4) - (x - x0) * Math.sin(0.4));
    const share = 1 / (1 + Math.exp((across - halfWidth) / 1.2));
    return 70 + share * (80 + 0.4 * (inner(x, y) - 125));
  };
}

export interface Rendering {
  /** Where the surface moved; the picture shows surface point p at movedPoint(p). */
  readonly motion?: PlaneMotion;
  readonly gain?: number;
  readonly bias?: number;
  /** Standard deviation of Gaussian pixel noise, grey levels, and its seed. */
  readonly noise?: number;
  readonly noiseSeed?: number;
}

/** Draws a surface after a motion, as a camera with 8 bits would. */
export function render(surface: Surface, width: number, height: number, rendering: Rendering = {}): Grey {
  const { motion, gain = 1, bias = 0, noise = 0, noiseSeed = 1 } = rendering;
  const back = motion ? inverseOf(motion) : undefined;
  const gaussian = gaussianFrom(noiseSeed);
  const data = new Uint8Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const [u, v] = back ? movedPoint(back, x, y) : [x, y];
      const value = gain * surface(u, v) + bias + (noise > 0 ? noise * gaussian() : 0);
      data[y * width + x] = Math.max(0, Math.min(255, Math.round(value)));
    }
  }
  return { width, height, data };
}

export const motionOf = (
  rotation: number,
  shiftX: number,
  shiftY: number,
  pivotX: number,
  pivotY: number,
  scale = 1,
): PlaneMotion => ({
  rotationDeg: deg(rotation),
  scale: ratio(scale),
  pivotX: px(pivotX),
  pivotY: px(pivotY),
  shiftX: px(shiftX),
  shiftY: px(shiftY),
});

export const inverseOf = (m: PlaneMotion): PlaneMotion =>
  motionOf(-m.rotationDeg, -m.shiftX, -m.shiftY, m.pivotX + m.shiftX, m.pivotY + m.shiftY, 1 / m.scale);

/** An ellipse of weight 1 in a picture, 0 outside. */
export function ellipseMask(picture: Grey, cx: number, cy: number, rx: number, ry: number): Float32Array {
  return Float32Array.from(picture.data, (_, i) => {
    const dx = ((i % picture.width) - cx) / rx;
    const dy = (Math.floor(i / picture.width) - cy) / ry;
    return dx * dx + dy * dy <= 1 ? 1 : 0;
  });
}

/** A picture flipped left to right. */
export function mirrored(picture: Grey): Grey {
  const { width, height, data } = picture;
  return {
    width,
    height,
    data: Uint8Array.from(data, (_, i) => data[Math.floor(i / width) * width + (width - 1 - (i % width))] as number),
  };
}

/** Standard normal numbers (Box & Muller 1958). */
export function gaussianFrom(seed: number): () => number {
  const random = uniformFrom(seed);
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
