import { type Picture, type QuarterTurn, shownSize } from './frame.ts';
import { contextOf, scratchCanvas } from './scratch-canvas.ts';

/** Brightness of an upright picture: row-major, 8 bits a pixel. */
export interface Luma {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array<ArrayBuffer>;
}

const PLANAR: readonly (string | null)[] = ['I420', 'I420A', 'I422', 'I444', 'NV12'];

/**
 * Reads the brightness of a decoded picture, turned upright.
 * Planar pictures (all decoders, most cameras) give their Y plane as it is; others go through a canvas.
 * Brightness may be in video range (16 to 235): enough for motion, which does not depend on gain or bias.
 * @throws Error when the picture is closed
 */
export async function readLuma(image: Picture, turn: QuarterTurn): Promise<Luma> {
  const upright = 'format' in image && isPlain(image) ? await readPlane(image) : readCanvas(image);
  return turned(upright, turn);
}

const isPlain = ({ format, visibleRect, displayWidth, displayHeight }: VideoFrame): boolean =>
  visibleRect?.width === displayWidth && visibleRect.height === displayHeight && PLANAR.includes(format);

async function readPlane(image: VideoFrame): Promise<Luma> {
  const { displayWidth: width, displayHeight: height } = image;
  const bytes = new Uint8Array(image.allocationSize());
  const layout = (await image.copyTo(bytes))[0];
  if (!layout) throw new Error('readPlane requires a picture with a brightness plane, got none');
  if (layout.stride === width) return { width, height, data: bytes.subarray(layout.offset, layout.offset + width * height) };
  const data = new Uint8Array(width * height);
  for (let y = 0; y < height; y += 1) {
    const from = layout.offset + y * layout.stride;
    data.set(bytes.subarray(from, from + width), y * width);
  }
  return { width, height, data };
}

function readCanvas(image: Picture): Luma {
  const { width, height } = shownSize(image);
  const context = contextOf(scratchCanvas(width, height), { alpha: false, willReadFrequently: true });
  context.drawImage(image, 0, 0, width, height);
  const rgba = context.getImageData(0, 0, width, height).data;
  const data = new Uint8Array(width * height);
  // Integer weights of ITU-R BT.601.
  for (let i = 0, p = 0; i < data.length; i += 1, p += 4) {
    data[i] = (77 * (rgba[p] ?? 0) + 150 * (rgba[p + 1] ?? 0) + 29 * (rgba[p + 2] ?? 0)) >> 8;
  }
  return { width, height, data };
}

/** The picture turned clockwise by `turn`. */
export function turned(picture: Luma, turn: QuarterTurn): Luma {
  if (turn === 0) return picture;
  const { width: w, height: h, data: from } = picture;
  const data = new Uint8Array(w * h);
  if (turn === 180) {
    for (let i = 0; i < data.length; i += 1) data[i] = from[data.length - 1 - i] ?? 0;
    return { width: w, height: h, data };
  }
  for (let y = 0; y < h; y += 1) {
    for (let x = 0; x < w; x += 1) {
      const to = turn === 90 ? x * h + (h - 1 - y) : (w - 1 - x) * h + y;
      data[to] = from[y * w + x] ?? 0;
    }
  }
  return { width: h, height: w, data };
}
