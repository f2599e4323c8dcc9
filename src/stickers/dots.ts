import type { Blob } from './blob.ts';
import { distance, type Spot } from './rgba-picture.ts';

/** A dot that moves about against the stickers by more than this is not taken up, px a ms. Chosen: under two px a frame. */
const MOVING_PX_A_MS = 0.05;
/** Two dots nearer than this are one, px: two windows show it with rings of their own. Chosen. */
const SAME_DOT_PX = 2;

/** Windows of several tracks may show one dot: each dot once. */
export const apart = (blobs: readonly Blob[]): readonly Blob[] =>
  blobs.filter((b, i) => blobs.findIndex((a) => distance(a.at, b.at) < SAME_DOT_PX) === i);
export const isOneOf = (dots: readonly (Blob | null)[], blob: Blob): boolean =>
  dots.some((d) => d !== null && distance(d.at, blob.at) < SAME_DOT_PX);

/** A dot is the same one as in the last picture up to a diameter away and so much a ms more. Chosen: as quick as a tip. */
const SAME_PX_A_MS = 0.35;

/** Whether a dot was elsewhere in the last picture, though the stickers were not. @param aside how far those went */
export function isMoving(blob: Blob, before: readonly Spot[], aside: Spot, dtMs: number): boolean {
  const ways = before.map((spot) => distance(spot, { x: blob.at.x - aside.x, y: blob.at.y - aside.y }));
  const way = Math.min(...ways);
  return way > MOVING_PX_A_MS * dtMs && way <= blob.diameterPx + SAME_PX_A_MS * dtMs;
}
