import { type QuarterTurn, uprightSize } from './frame.ts';

/** Colours of an upright picture, or of a smaller copy of it: row-major, red, green, blue, alpha, 8 bits each. */
export interface Rgba {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray;
  /** How many px of the picture itself one of these is wide; at least 1. */
  readonly scale: number;
}

/** A picture to be read: a frame as decoded, or a bitmap that stands upright already. */
export type ReadablePicture = VideoFrame | ImageBitmap;

const sizeOf = (image: ReadablePicture, turn: QuarterTurn) =>
  'displayWidth' in image ? uprightSize(image, turn) : { width: image.width, height: image.height };

/** Reads colours again and again with one canvas, which is resized when the pictures have another size. */
export class RgbaReader {
  private readonly canvas = new OffscreenCanvas(1, 1);

  /**
   * @param turn clockwise, sets the picture upright; 0 for a bitmap
   * @param mostWidth px; a wider picture is made smaller
   */
  read(image: ReadablePicture, turn: QuarterTurn, mostWidth: number): Rgba {
    const full = sizeOf(image, turn);
    const scale = Math.max(1, full.width / mostWidth);
    const width = Math.round(full.width / scale);
    const height = Math.round(full.height / scale);
    if (this.canvas.width !== width || this.canvas.height !== height) {
      this.canvas.width = width;
      this.canvas.height = height;
    }
    const context = this.canvas.getContext('2d', { alpha: false, willReadFrequently: true });
    if (!context) throw new Error('RgbaReader requires a 2d context, got none');
    const across = turn === 90 || turn === 270;
    const [w, h] = across ? [height, width] : [width, height];
    context.imageSmoothingQuality = 'medium';
    context.setTransform(1, 0, 0, 1, width / 2, height / 2);
    context.rotate((turn * Math.PI) / 180);
    context.drawImage(image, -w / 2, -h / 2, w, h);
    context.setTransform(1, 0, 0, 1, 0, 0);
    return { width, height, data: context.getImageData(0, 0, width, height).data, scale };
  }
}
