import { type Gradients, gradientsOf, reflected, SCHARR } from './gradients.ts';
import type { Crop, FloatImage, Grey } from './grey.ts';

/** One picture of a pyramid. Pixel i of level n lies on pixel i * 2^n of level 0. */
export interface PyramidLevel {
  readonly image: FloatImage;
  /** Scharr slopes, grey levels per pixel of this level; computed on the first call and kept. */
  readonly gradients: () => Gradients;
}

/** A picture and its halved copies. Level 0 is the picture itself; (originX, originY) is the place of its first pixel in the frame, px. */
export interface Pyramid {
  readonly originX: number;
  readonly originY: number;
  readonly levels: readonly PyramidLevel[];
}

/** A level smaller than this on a side holds no window worth matching. Chosen. */
const MIN_LEVEL_SIZE_PX = 8;

/**
 * Gaussian pyramid: 5-tap binomial (1 4 6 4 1)/16, factor 2, reflected edges. Burt & Adelson 1983, IEEE Trans Commun 31:532.
 * @param levelCount pictures wanted, the input included; fewer are made when one would be under 8 px on a side
 */
export function buildPyramid(picture: Grey | Crop | FloatImage, levelCount: number): Pyramid {
  const levels = [levelOf({ width: picture.width, height: picture.height, data: new Float32Array(picture.data) })];
  for (let n = 1; n < levelCount; n++) {
    const finer = (levels[n - 1] as PyramidLevel).image;
    if (Math.min(finer.width, finer.height) < 2 * MIN_LEVEL_SIZE_PX) break;
    levels.push(levelOf(halved(finer)));
  }
  return {
    originX: 'originX' in picture ? picture.originX : 0,
    originY: 'originY' in picture ? picture.originY : 0,
    levels,
  };
}

/** Smooths with the binomial kernel and keeps every other pixel, the first included. Size (w + 1) / 2, rounded down. */
export function halved(image: FloatImage): FloatImage {
  const { width, height, data } = image;
  const outWidth = (width + 1) >> 1;
  const outHeight = (height + 1) >> 1;
  const out = new Float32Array(outWidth * outHeight);
  // Columns first into one row with two reflected pixels on either side, then along that row.
  const row = new Float32Array(width + 4);
  for (let y = 0; y < outHeight; y++) {
    const r0 = reflected(2 * y - 2, height) * width;
    const r1 = reflected(2 * y - 1, height) * width;
    const r2 = 2 * y * width;
    const r3 = reflected(2 * y + 1, height) * width;
    const r4 = reflected(2 * y + 2, height) * width;
    for (let x = 0; x < width; x++) {
      row[x + 2] =
        ((data[r0 + x] as number) + (data[r4 + x] as number)) * (1 / 256) +
        ((data[r1 + x] as number) + (data[r3 + x] as number)) * (4 / 256) +
        (data[r2 + x] as number) * (6 / 256);
    }
    row[0] = row[reflected(-2, width) + 2] as number;
    row[1] = row[reflected(-1, width) + 2] as number;
    row[width + 2] = row[reflected(width, width) + 2] as number;
    row[width + 3] = row[reflected(width + 1, width) + 2] as number;
    const start = y * outWidth;
    for (let x = 0; x < outWidth; x++) {
      const at = 2 * x;
      out[start + x] =
        (row[at] as number) +
        (row[at + 4] as number) +
        4 * ((row[at + 1] as number) + (row[at + 3] as number)) +
        6 * (row[at + 2] as number);
    }
  }
  return { width: outWidth, height: outHeight, data: out };
}

function levelOf(image: FloatImage): PyramidLevel {
  let gradients: Gradients | undefined;
  return {
    image,
    gradients: () => {
      gradients ??= gradientsOf(image, SCHARR);
      return gradients;
    },
  };
}
