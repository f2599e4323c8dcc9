import type { SegmentLine } from '../angles/joint-angle.ts';
import { degOfRad } from '../units.ts';
import type { PicturePoint } from './live-view.ts';

/** The line from one point to another. */
export const lineBetween = (from: PicturePoint, to: PicturePoint): SegmentLine => ({
  directionDeg: degOfRad(Math.atan2(to.y - from.y, to.x - from.x)),
  lengthPx: Math.hypot(to.x - from.x, to.y - from.y),
});
