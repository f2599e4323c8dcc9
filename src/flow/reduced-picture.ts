import { px } from '../units.ts';
import type { FloatImage, Grey } from './grey.ts';
import type { PlaneMotion } from './plane-motion.ts';

/** The shorter side of a reduced picture is at least this, px. Chosen: shifts come out within 0.05 px of the full picture, in a third of a millisecond. */
const LEAST_SIDE_PX = 160;

/** A picture of block means; pixel i of it lies on pixel `factor * i + (factor - 1) / 2` of the full picture. */
export interface ReducedPicture {
  readonly image: FloatImage;
  readonly factor: number;
}

/** Means over square blocks, as large as LEAST_SIDE_PX lets them be; pixels beyond the last whole block are left off. */
export function reducedPicture({ width, height, data }: Grey): ReducedPicture {
  const factor = Math.max(1, Math.floor(Math.min(width, height) / LEAST_SIDE_PX));
  const w = Math.floor(width / factor);
  const h = Math.floor(height / factor);
  const out = new Float32Array(w * h);
  const share = 1 / (factor * factor);
  for (let y = 0; y < h; y++) {
    const row = y * w;
    for (let k = 0; k < factor; k++) {
      let at = (y * factor + k) * width;
      for (let x = 0; x < w; x++) {
        let sum = 0;
        for (let i = 0; i < factor; i++) sum += data[at++] as number;
        out[row + x] = (out[row + x] as number) + sum;
      }
    }
    for (let x = 0; x < w; x++) out[row + x] = (out[row + x] as number) * share;
  }
  return { image: { width: w, height: h, data: out }, factor };
}

/** A place of the full picture in the reduced one. */
export const reducedPlace = (at: number, factor: number): number => (at - (factor - 1) / 2) / factor;

/** A motion seen in the reduced picture, as the full picture shows it. */
export const enlargedMotion = (motion: PlaneMotion, factor: number): PlaneMotion => ({
  ...motion,
  pivotX: px(motion.pivotX * factor + (factor - 1) / 2),
  pivotY: px(motion.pivotY * factor + (factor - 1) / 2),
  shiftX: px(motion.shiftX * factor),
  shiftY: px(motion.shiftY * factor),
});
