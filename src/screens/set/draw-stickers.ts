import type { PictureSize } from '../../capture/frame.ts';
import type { PicturePoint } from '../../measure/live-view.ts';
import { type LegColours, plate, wiped } from './overlay.ts';

/** Shares of the picture's longer side. Chosen: the sticker in the ring stays seen. */
const LINE = 0.006;
const RING = 0.022;
const TEXT = 0.06;
const NAME = 0.034;

/** A point that is followed, px of the upright picture. */
export interface MarkedPoint extends PicturePoint {
  /** Put where its motion led, not seen. */
  readonly bridged?: boolean;
  readonly name?: string;
}

/** What is drawn besides the points. */
export interface StickerMarks {
  /** The angle as it is written at the middle point; null when not measured. */
  readonly angle: string | null;
  /** Where the keyboard's cross is; null: there is none. */
  readonly cross: PicturePoint | null;
}

/**
 * Draws points from one end to the other with the lines between neighbours; wipes what was there before.
 * @param points in order; null: not seen, no line leads to it
 */
export function drawStickers(
  canvas: HTMLCanvasElement,
  size: PictureSize,
  points: readonly (MarkedPoint | null)[],
  { angle, cross }: StickerMarks,
  colours: LegColours,
): void {
  const context = wiped(canvas, size);
  const scale = Math.max(size.width, size.height);
  const passes = [
    [LINE * 2, colours.edge],
    [LINE, colours.line],
  ] as const;
  for (const [width, colour] of passes) {
    context.lineCap = 'round';
    context.lineWidth = scale * width;
    context.strokeStyle = colour;
    points.forEach((from, i) => {
      const to = points[i + 1];
      if (!from || !to) return;
      const [dx, dy] = [to.x - from.x, to.y - from.y];
      const long = Math.hypot(dx, dy);
      const gap = (scale * RING) / Math.max(long, 1);
      if (gap > 0.45) return;
      context.beginPath();
      context.moveTo(from.x + dx * gap, from.y + dy * gap);
      context.lineTo(to.x - dx * gap, to.y - dy * gap);
      context.stroke();
    });
    for (const point of points) {
      if (!point) continue;
      context.setLineDash(point.bridged ? [scale * LINE * 2, scale * LINE * 2] : []);
      context.beginPath();
      context.arc(point.x, point.y, scale * RING, 0, 2 * Math.PI);
      context.stroke();
      context.setLineDash([]);
    }
    if (cross) {
      context.beginPath();
      context.moveTo(cross.x - scale * RING * 1.6, cross.y);
      context.lineTo(cross.x + scale * RING * 1.6, cross.y);
      context.moveTo(cross.x, cross.y - scale * RING * 1.6);
      context.lineTo(cross.x, cross.y + scale * RING * 1.6);
      context.stroke();
    }
  }
  const middle = points[1];
  // The middle one's name above all three: beside each other they would cover each other.
  const top = Math.min(...points.flatMap((point) => (point ? [point.y as number] : [])));
  points.forEach((point, i) => {
    if (!point?.name) return;
    const y = i === 1 ? top - scale * (RING * 1.3 + NAME) : point.y + scale * (RING + NAME);
    plate(context, point.name, { leftOf: (width) => point.x - width / 2, y, height: scale * NAME }, colours);
  });
  if (angle !== null && middle)
    plate(
      context,
      angle,
      { leftOf: (width) => middle.x - width / 2, y: middle.y - scale * (RING + TEXT), height: scale * TEXT },
      colours,
    );
}
