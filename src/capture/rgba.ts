import { type Picture, type QuarterTurn, uprightSize } from './frame.ts';
import { contextOf, scratchCanvas } from './scratch-canvas.ts';

/** Colours of an upright picture, or of a smaller copy of it: row-major, red, green, blue, alpha, 8 bits each. */
export interface Rgba {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray;
  /** How many px of the picture itself one of these is wide; at least 1. */
  readonly scale: number;
}

/** Reads colours again and again with one canvas, which is resized when the pictures have another size. */
export class RgbaReader {
  private readonly canvas = scratchCanvas(1, 1);

  /**
   * @param turn clockwise, sets the picture upright; 0 for a bitmap
   * @param mostWidth px; a wider picture is made smaller
   */
  read(image: Picture, turn: QuarterTurn, mostWidth: number): Rgba {
    const full = uprightSize(image, turn);
    const scale = Math.max(1, full.width / mostWidth);
    const width = Math.round(full.width / scale);
    const height = Math.round(full.height / scale);
    if (this.canvas.width !== width || this.canvas.height !== height) {
      this.canvas.width = width;
      this.canvas.height = height;
    }
    const context = contextOf(this.canvas, { alpha: false, willReadFrequently: true });
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
