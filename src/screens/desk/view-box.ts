import type { PictureSize } from '../../capture/frame.ts';
import type { PointName } from '../../measure/angle-of-points.ts';
import type { LegDrawing } from '../../measure/live-view.ts';

/** The part of a picture that is shown, px of the picture; of the picture's own shape. */
export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export const wholeOf = ({ width, height }: PictureSize): ViewBox => ({ x: 0, y: 0, width, height });

/** The points take up this much of the part that is shown at the most; and no more than so much closer. Chosen: there is room to move them. */
const FILLED = 0.5;
const CLOSEST = 4;

/** The part of the picture around these points. */
export function closeTo(leg: LegDrawing, names: readonly PointName[], size: PictureSize): ViewBox {
  const [xs, ys] = [names.map((name) => leg[name].x), names.map((name) => leg[name].y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [across, down] = [Math.max(...xs) - left, Math.max(...ys) - top];
  const share = Math.max(across / size.width, down / size.height) / FILLED;
  const scale = Math.min(1, Math.max(1 / CLOSEST, share));
  const [width, height] = [size.width * scale, size.height * scale];
  const inside = (middle: number, length: number, most: number) => Math.min(Math.max(0, middle - length / 2), most - length);
  return { x: inside(left + across / 2, width, size.width), y: inside(top + down / 2, height, size.height), width, height };
}
