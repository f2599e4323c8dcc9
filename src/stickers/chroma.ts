import type { RgbaPicture } from './rgba-picture.ts';

/**
 * A colour without its brightness: the two opponent axes red-green and yellow-blue, each divided by the mean of the three channels. Dimensionless; grey is
 * (0, 0), skin lies about 0.3 from it, a saturated sticker 0.7 to 1.8. A change of light by a factor leaves it where it is.
 */
export interface Chroma {
  readonly redGreen: number;
  readonly yellowBlue: number;
}

/** Added to the brightness before dividing, grey levels: noise of a dark pixel is not to look like colour. Chosen. */
const DARK_LEVEL = 20;

export const chromaDistance = (p: Chroma, q: Chroma): number => Math.hypot(p.redGreen - q.redGreen, p.yellowBlue - q.yellowBlue);

/** The colour `share` of the way from one to another. */
export const between = (from: Chroma, to: Chroma, share: number): Chroma => ({
  redGreen: from.redGreen + share * (to.redGreen - from.redGreen),
  yellowBlue: from.yellowBlue + share * (to.yellowBlue - from.yellowBlue),
});

/** The chroma of one colour. @param red,green,blue 0 to 255 */
export function chromaOfColour(red: number, green: number, blue: number): Chroma {
  const weight = 1 / ((red + green + blue) / 3 + DARK_LEVEL);
  return { redGreen: (red - green) * Math.SQRT1_2 * weight, yellowBlue: (red + green - 2 * blue) * SIXTH * weight };
}

/** A rectangle of cells, each the mean of `step` x `step` pixels. Cell (0, 0) has its centre at (originX, originY), px of the frame. */
export interface ChromaPatch {
  readonly width: number;
  readonly height: number;
  readonly step: number;
  readonly originX: number;
  readonly originY: number;
  readonly redGreen: Float32Array;
  readonly yellowBlue: Float32Array;
  /** The smallest of the three channels, 0 to 255: a highlight burnt to white is high in all of them. */
  readonly least: Float32Array;
}

/** Binomial weights 1 2 1 both ways, edges repeated: noise falls to 0.375 of itself, and no edge moves. */
function smoothed(values: Float32Array, width: number): Float32Array {
  const height = values.length / width;
  const rows = new Float32Array(values.length);
  for (let y = 0; y < height; y++) {
    const start = y * width;
    for (let x = 0; x < width; x++) {
      const left = values[start + Math.max(0, x - 1)] as number;
      const right = values[start + Math.min(width - 1, x + 1)] as number;
      rows[start + x] = (left + 2 * (values[start + x] as number) + right) / 4;
    }
  }
  const out = new Float32Array(values.length);
  for (let y = 0; y < height; y++) {
    const above = Math.max(0, y - 1) * width;
    const below = Math.min(height - 1, y + 1) * width;
    for (let x = 0; x < width; x++) {
      out[y * width + x] = ((rows[above + x] as number) + 2 * (rows[y * width + x] as number) + (rows[below + x] as number)) / 4;
    }
  }
  return out;
}

/**
 * Chroma of the part of a picture within `reachPx` of (x, y), what lies outside the picture left off. Single pixels are smoothed a
 * little, since video carries colour for two by two of them and noise is strongest in it.
 * @returns null when that part holds no whole cell
 */
export function chromaAround(picture: RgbaPicture, x: number, y: number, reachPx: number, step = 1): ChromaPatch | null {
  const x0 = Math.max(0, Math.floor(x - reachPx));
  const y0 = Math.max(0, Math.floor(y - reachPx));
  const width = Math.floor((Math.min(picture.width, Math.ceil(x + reachPx) + 1) - x0) / step);
  const height = Math.floor((Math.min(picture.height, Math.ceil(y + reachPx) + 1) - y0) / step);
  if (!(width > 0 && height > 0)) return null;
  const cells = readCells(picture, x0, y0, width, height, step);
  return step > 1
    ? cells
    : { ...cells, redGreen: smoothed(cells.redGreen, width), yellowBlue: smoothed(cells.yellowBlue, width) };
}

/** Chroma of a whole picture in cells of `step` pixels. */
export const chromaOf = (picture: RgbaPicture, step: number): ChromaPatch =>
  readCells(picture, 0, 0, Math.floor(picture.width / step), Math.floor(picture.height / step), step);

function readCells(
  { width: across, data }: RgbaPicture,
  x0: number,
  y0: number,
  width: number,
  height: number,
  step: number,
): ChromaPatch {
  const redGreen = new Float32Array(width * height);
  const yellowBlue = new Float32Array(width * height);
  const least = new Float32Array(width * height);
  const pixels = step * step;
  for (let cy = 0; cy < height; cy++) {
    for (let cx = 0; cx < width; cx++) {
      let red = 0;
      let green = 0;
      let blue = 0;
      for (let j = 0; j < step; j++) {
        let p = 4 * ((y0 + cy * step + j) * across + x0 + cx * step);
        for (let i = 0; i < step; i++, p += 4) {
          red += data[p] as number;
          green += data[p + 1] as number;
          blue += data[p + 2] as number;
        }
      }
      const weight = 1 / ((red + green + blue) / 3 + DARK_LEVEL * pixels);
      const at = cy * width + cx;
      redGreen[at] = (red - green) * Math.SQRT1_2 * weight;
      yellowBlue[at] = (red + green - 2 * blue) * SIXTH * weight;
      least[at] = Math.min(red, green, blue) / pixels;
    }
  }
  const middle = (step - 1) / 2;
  return { width, height, step, originX: x0 + middle, originY: y0 + middle, redGreen, yellowBlue, least };
}

const SIXTH = 1 / Math.sqrt(6);
