import { type Picture, type QuarterTurn, shownSize } from '../capture/frame.ts';
import { contextOf, type ScratchCanvas } from '../capture/scratch-canvas.ts';
import { px } from '../units.ts';
import type { Landmark } from './landmarks.ts';

/**
 * Draws `image` turned clockwise by `turn` so that it fills the canvas.
 * The canvas is resized when the turned picture has another size.
 */
export function drawTurned(canvas: ScratchCanvas, image: Picture, turn: QuarterTurn): void {
  const { width: w, height: h } = shownSize(image);
  const [width, height] = turn === 90 || turn === 270 ? [h, w] : [w, h];
  if (canvas.width !== width || canvas.height !== height) {
    canvas.width = width;
    canvas.height = height;
  }
  const context = contextOf(canvas, { alpha: false });
  context.setTransform(1, 0, 0, 1, width / 2, height / 2);
  context.rotate((turn * Math.PI) / 180);
  context.drawImage(image, -w / 2, -h / 2, w, h);
  context.setTransform(1, 0, 0, 1, 0, 0);
}

/**
 * The point of the upright picture from which a turned picture's normalised point came.
 * @param x,y in [0, 1] of the turned picture; z in widths of the turned picture
 * @param turn clockwise turn from the upright picture to the turned one
 * @param width,height px of the upright picture
 */
export function fromTurned(
  point: { readonly x: number; readonly y: number; readonly z: number },
  turn: QuarterTurn,
  { width, height }: { readonly width: number; readonly height: number },
): Pick<Landmark, 'x' | 'y' | 'z'> {
  const { x, y } = point;
  const turnedWidth = turn === 90 || turn === 270 ? height : width;
  const z = px(point.z * turnedWidth);
  if (turn === 90) return { x: px(y * width), y: px((1 - x) * height), z };
  if (turn === 180) return { x: px((1 - x) * width), y: px((1 - y) * height), z };
  if (turn === 270) return { x: px((1 - y) * width), y: px(x * height), z };
  return { x: px(x * width), y: px(y * height), z };
}
