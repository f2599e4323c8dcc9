import type { Rect } from './grey.ts';
import type { Capsule } from './segment-shape.ts';

/** Width of the soft edge of a mask, px. Chosen: a pixel either side, so that a shift of the outline changes the weights smoothly. */
const EDGE_PX = 2;

/** The smallest rectangle around capsules with `margin` px to spare on each side. */
export function boundsOf(outline: readonly Capsule[], margin: number): Rect {
  let left = Number.POSITIVE_INFINITY;
  let top = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  let bottom = Number.NEGATIVE_INFINITY;
  for (const { a, b, radius } of outline) {
    left = Math.min(left, a.x - radius, b.x - radius);
    top = Math.min(top, a.y - radius, b.y - radius);
    right = Math.max(right, a.x + radius, b.x + radius);
    bottom = Math.max(bottom, a.y + radius, b.y + radius);
  }
  return { x: left - margin, y: top - margin, width: right - left + 2 * margin, height: bottom - top + 2 * margin };
}

/**
 * Weight of each pixel of a crop: 1 inside the outline, 0 outside, falling over EDGE_PX at the border.
 * @param originX,originY frame px of the crop's first pixel
 */
export function capsuleMask(
  outline: readonly Capsule[],
  crop: { readonly width: number; readonly height: number; readonly originX: number; readonly originY: number },
): Float32Array {
  const mask = new Float32Array(crop.width * crop.height);
  for (const { a, b, radius } of outline) {
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    const squared = dx * dx + dy * dy || 1;
    for (let row = 0; row < crop.height; row++) {
      for (let column = 0; column < crop.width; column++) {
        const px = crop.originX + column - a.x;
        const py = crop.originY + row - a.y;
        const share = Math.max(0, Math.min(1, (px * dx + py * dy) / squared));
        const inside = radius - Math.hypot(px - share * dx, py - share * dy);
        const weight = Math.max(0, Math.min(1, inside / EDGE_PX + 0.5));
        const at = row * crop.width + column;
        if (weight > (mask[at] as number)) mask[at] = weight;
      }
    }
  }
  return mask;
}
