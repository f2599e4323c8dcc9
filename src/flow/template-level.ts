/** One pyramid level of a template: the masked pixels as parallel lists. */
export interface TemplateLevel {
  /** The pyramid level n; one pixel here is 2^n frame pixels. */
  readonly level: number;
  readonly count: number;
  /** Place of each pixel from the template's centroid, px of this level. */
  readonly x: Float32Array;
  readonly y: Float32Array;
  /** Grey value less the weighted mean, divided by `contrast`. */
  readonly value: Float32Array;
  /** Mask weight, 0 to 1. */
  readonly weight: Float32Array;
  /** Steepest-descent images, four a pixel: change of `value` for a turn and a growth that move a pixel at `radius` by 1 px, and a shift by 1 px along x and y. */
  readonly steepest: Float32Array;
  /** Root mean square distance of the pixels from the centroid, px of this level. */
  readonly radius: number;
  /** Sum of `weight`. */
  readonly totalWeight: number;
  /** Weighted standard deviation of the grey values. */
  readonly contrast: number;
}
