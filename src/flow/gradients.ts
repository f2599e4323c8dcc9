import type { FloatImage } from './grey.ts';

/** Slopes of a picture in grey levels per pixel, same layout as the picture. */
export interface Gradients {
  readonly x: Float32Array;
  readonly y: Float32Array;
}

/** Smoothing across the slope: [side, centre, side], summing to 1. */
export interface DerivativeKernel {
  readonly side: number;
  readonly centre: number;
}

/** Scharr H 2000, dissertation, Heidelberg: 3 10 3, the 3x3 kernel whose direction error is smallest. */
export const SCHARR: DerivativeKernel = { side: 3 / 16, centre: 10 / 16 };
/** Sobel's 1 2 1, the usual choice in front of a corner detector. */
export const SOBEL: DerivativeKernel = { side: 1 / 4, centre: 2 / 4 };

/**
 * Central-difference slopes of a picture, smoothed across. At the edge the picture is continued by reflection about the edge pixel, so the
 * slope across an edge reads 0 there.
 */
export function gradientsOf(image: FloatImage, kernel: DerivativeKernel): Gradients {
  const { width, height, data } = image;
  const gx = new Float32Array(width * height);
  const gy = new Float32Array(width * height);
  const side = kernel.side / 2;
  const centre = kernel.centre / 2;
  // One padded row each of the vertically smoothed and the vertically differenced picture.
  const smooth = new Float32Array(width + 2);
  const slope = new Float32Array(width + 2);
  for (let row = 0; row < height; row++) {
    const here = row * width;
    const above = reflected(row - 1, height) * width;
    const below = reflected(row + 1, height) * width;
    for (let col = 0; col < width; col++) {
      const a = data[above + col] as number;
      const b = data[below + col] as number;
      smooth[col + 1] = (a + b) * side + (data[here + col] as number) * centre;
      slope[col + 1] = b - a;
    }
    const left = reflected(-1, width) + 1;
    const right = reflected(width, width) + 1;
    smooth[0] = smooth[left] as number;
    slope[0] = slope[left] as number;
    smooth[width + 1] = smooth[right] as number;
    slope[width + 1] = slope[right] as number;
    for (let col = 0; col < width; col++) {
      gx[here + col] = (smooth[col + 2] as number) - (smooth[col] as number);
      gy[here + col] = ((slope[col] as number) + (slope[col + 2] as number)) * side + (slope[col + 1] as number) * centre;
    }
  }
  return { x: gx, y: gy };
}

/** Index continued by reflection about the edge pixel (… 2 1 | 0 1 2 …); a picture one pixel wide repeats it. */
export function reflected(index: number, length: number): number {
  if (length === 1) return 0;
  const period = 2 * (length - 1);
  const folded = ((index % period) + period) % period;
  return folded < length ? folded : period - folded;
}
