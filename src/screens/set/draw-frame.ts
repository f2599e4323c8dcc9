import { type Frame, shownSize, uprightSize } from '../../capture/frame.ts';

/** Draws a frame upright, filling the canvas, which takes the picture's size. Never mirrored: the side matters. */
export function drawFrame(canvas: HTMLCanvasElement, { image, turn }: Frame): void {
  const { width, height } = uprightSize(image, turn);
  if (canvas.width !== width || canvas.height !== height) {
    canvas.width = width;
    canvas.height = height;
  }
  const context = canvas.getContext('2d', { alpha: false });
  if (!context) throw new Error('drawFrame requires a 2d context, got none');
  const { width: w, height: h } = shownSize(image);
  context.setTransform(1, 0, 0, 1, width / 2, height / 2);
  context.rotate((turn * Math.PI) / 180);
  context.drawImage(image, -w / 2, -h / 2, w, h);
  context.setTransform(1, 0, 0, 1, 0, 0);
}
