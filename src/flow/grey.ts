/**
 * Pictures of one channel. Row-major; pixel centres lie on whole numbers: the centre of the top-left pixel is (0, 0), x to the right, y down.
 */

/** 8-bit luma, `data[y * width + x]`, 0 black to 255 white. */
export interface Grey {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** The same layout in single precision; values are grey levels unless said otherwise. */
export interface FloatImage {
  readonly width: number;
  readonly height: number;
  readonly data: Float32Array;
}

/** A rectangle cut out of a frame; (originX, originY) is where its top-left pixel lies in the frame, px. */
export interface Crop extends Grey {
  readonly originX: number;
  readonly originY: number;
}

export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * Cuts a rectangle out of a frame. Fractions grow the rectangle to whole pixels; what lies outside the frame is left off.
 * @returns a copy that remembers its origin in the frame, or `undefined` when the rectangle misses the frame altogether
 */
export function cropOf(frame: Grey, rect: Rect): Crop | undefined {
  const x0 = Math.max(0, Math.floor(rect.x));
  const y0 = Math.max(0, Math.floor(rect.y));
  const x1 = Math.min(frame.width, Math.ceil(rect.x + rect.width));
  const y1 = Math.min(frame.height, Math.ceil(rect.y + rect.height));
  // Written so that a rectangle with a NaN in it misses the frame too.
  if (!(x1 > x0 && y1 > y0)) return undefined;
  const width = x1 - x0;
  const height = y1 - y0;
  const data = new Uint8Array(width * height);
  for (let row = 0; row < height; row++) {
    const start = (y0 + row) * frame.width + x0;
    data.set(frame.data.subarray(start, start + width), row * width);
  }
  return { width, height, data, originX: x0, originY: y0 };
}
