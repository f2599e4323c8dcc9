/** Colour pixels of one upright frame as a canvas gives them: row-major, red, green, blue, alpha, 8 bits each. Pixel centres lie on whole numbers. */
export interface RgbaPicture {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray;
}

/** A place in the picture, px, x to the right, y down. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

export const distance = (p: Spot, q: Spot): number => Math.hypot(p.x - q.x, p.y - q.y);
