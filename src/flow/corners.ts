import { gradientsOf, reflected, SOBEL } from './gradients.ts';
import type { FloatImage } from './grey.ts';
import type { Pyramid, PyramidLevel } from './pyramid.ts';

export interface CornerOptions {
  /** Most corners returned, the strongest first. */
  readonly maxCount: number;
  /** Least strength, as a share of the strongest corner's. */
  readonly quality: number;
  /** Least distance between two corners, px. */
  readonly minDistancePx: number;
  /** Side of the square over which the slopes are summed, px, odd. */
  readonly blockPx: number;
  /** One entry a pixel of the picture, row-major; corners are looked for where it is not 0. */
  readonly mask?: Uint8Array;
}

/** 60 corners, 5 px apart, not under 1 % of the strongest: chosen. */
export const CORNER_DEFAULTS: CornerOptions = { maxCount: 60, quality: 0.01, minDistancePx: 5, blockPx: 3 };

/** Corners as x, y pairs, frame px (whole pixels of the picture), strongest first. */
export interface Corners {
  readonly points: Float32Array;
  /** Smaller eigenvalue of the mean gradient matrix, (grey levels per px)^2; compare with `minEigenvalue` of LucasKanadeOptions. */
  readonly strength: Float32Array;
}

/**
 * Points whose neighbourhood changes in every direction: local maxima of the smaller eigenvalue of the gradient matrix.
 * Shi & Tomasi 1994, CVPR 593. The outermost pixels of the picture are never corners. A picture without corners gives an empty list.
 */
export function findCorners(pyramid: Pyramid, options: Partial<CornerOptions> = {}): Corners {
  const { maxCount, quality, minDistancePx, blockPx, mask } = { ...CORNER_DEFAULTS, ...options };
  const { image } = pyramid.levels[0] as PyramidLevel;
  const { width, height } = image;
  if (blockPx % 2 !== 1) throw new Error(`findCorners requires an odd blockPx, got ${blockPx}`);
  if (mask && mask.length !== width * height) {
    throw new Error(`findCorners requires one mask entry a pixel, got ${mask.length} for ${width * height}`);
  }
  const strength = smallerEigenvalues(image, blockPx);
  let strongest = 0;
  for (let i = 0; i < strength.length; i++) {
    if (mask?.[i] !== 0) strongest = Math.max(strongest, strength[i] as number);
  }
  const least = strongest * quality;
  const candidates: number[] = [];
  for (let y = 1; y < height - 1; y++) {
    for (let x = 1; x < width - 1; x++) {
      const i = y * width + x;
      const s = strength[i] as number;
      if (s > least && mask?.[i] !== 0 && isPeak(strength, i, width)) candidates.push(i);
    }
  }
  // On a tie the later pixel first: any fixed order will do, this one is OpenCV's.
  candidates.sort((a, b) => (strength[b] as number) - (strength[a] as number) || b - a);
  const chosen = spreadOut(candidates, width, minDistancePx, maxCount);
  const points = new Float32Array(2 * chosen.length);
  chosen.forEach((i, k) => {
    points[2 * k] = (i % width) + pyramid.originX;
    points[2 * k + 1] = Math.floor(i / width) + pyramid.originY;
  });
  return { points, strength: Float32Array.from(chosen, (i) => strength[i] as number) };
}

function isPeak(strength: Float32Array, i: number, width: number): boolean {
  const s = strength[i] as number;
  for (let row = i - width; row <= i + width; row += width) {
    for (let at = row - 1; at <= row + 1; at++) if ((strength[at] as number) > s) return false;
  }
  return true;
}

/** The candidates in order, less those nearer than `distance` to one already taken. */
function spreadOut(candidates: readonly number[], width: number, distance: number, maxCount: number): readonly number[] {
  const chosen: number[] = [];
  for (const i of candidates) {
    if (chosen.length >= maxCount) break;
    const x = i % width;
    const y = Math.floor(i / width);
    const free = chosen.every((c) => ((c % width) - x) ** 2 + (Math.floor(c / width) - y) ** 2 >= distance * distance);
    if (free) chosen.push(i);
  }
  return chosen;
}

/** Smaller eigenvalue of the mean gradient matrix over a block about each pixel. */
function smallerEigenvalues(image: FloatImage, block: number): Float32Array {
  const { width, height } = image;
  const { x: gx, y: gy } = gradientsOf(image, SOBEL);
  const half = (block - 1) / 2;
  const columns = Int32Array.from({ length: width + block - 1 }, (_, k) => reflected(k - half, width));
  const out = new Float32Array(width * height);
  const xx = new Float64Array(width);
  const xy = new Float64Array(width);
  const yy = new Float64Array(width);
  for (let y = 0; y < height; y++) {
    xx.fill(0);
    xy.fill(0);
    yy.fill(0);
    for (let k = -half; k <= half; k++) {
      const row = reflected(y + k, height) * width;
      for (let x = 0; x < width; x++) {
        const a = gx[row + x] as number;
        const b = gy[row + x] as number;
        xx[x] = (xx[x] as number) + a * a;
        xy[x] = (xy[x] as number) + a * b;
        yy[x] = (yy[x] as number) + b * b;
      }
    }
    for (let x = 0; x < width; x++) {
      let a = 0;
      let b = 0;
      let c = 0;
      for (let k = 0; k < block; k++) {
        const column = columns[x + k] as number;
        a += xx[column] as number;
        b += xy[column] as number;
        c += yy[column] as number;
      }
      out[y * width + x] = (a + c - Math.sqrt((a - c) * (a - c) + 4 * b * b)) / (2 * block * block);
    }
  }
  return out;
}
