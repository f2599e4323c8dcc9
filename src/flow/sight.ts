import { type Crop, cropOf, type Grey, type Rect } from './grey.ts';
import { buildPyramid, type Pyramid } from './pyramid.ts';

/** A part of a frame, ready to be searched. */
export interface Sight {
  /** The whole frame. */
  readonly frame: Grey;
  readonly crop: Crop;
  /** Of `crop`. */
  readonly pyramid: Pyramid;
}

/** The part of a frame within a rectangle; null where the rectangle misses the frame. @param levels pyramid levels */
export function sightOf(frame: Grey, rect: Rect, levels: number): Sight | null {
  const crop = cropOf(frame, rect);
  return crop ? { frame, crop, pyramid: buildPyramid(crop, levels) } : null;
}
