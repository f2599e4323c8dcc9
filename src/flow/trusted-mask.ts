import { radOfDeg } from '../units.ts';
import type { Crop } from './grey.ts';
import type { PatchAlignment } from './patch-alignment.ts';
import type { PatchTemplate } from './patch-template.ts';
import type { TemplateLevel } from './template-level.ts';

/** Pixels of a template lie within this many root mean square radii of its centroid; capsules within 2.5. */
const REACH = 4;

/**
 * Takes out of a mask what did not fit when a segment was found in this picture: a hand before it, ground beside it.
 * @param mask weights of the crop's pixels, changed in place; pixels that the template did not cover keep theirs
 * @param level the finest level that the alignment used
 */
export function trustOnly(
  mask: Float32Array,
  crop: Crop,
  template: PatchTemplate,
  level: TemplateLevel,
  found: PatchAlignment,
): void {
  const reach = Math.ceil(REACH * level.radius);
  const side = 2 * reach + 1;
  const kept = new Float32Array(side * side).fill(Number.NaN);
  // The template's pixels lie on a grid, shifted by the same fraction from the centroid.
  const offX = fraction(level.x[0] as number);
  const offY = fraction(level.y[0] as number);
  const cell = (x: number, y: number): number => {
    const column = Math.round(x - offX) + reach;
    const row = Math.round(y - offY) + reach;
    return column >= 0 && row >= 0 && column < side && row < side ? row * side + column : -1;
  };
  for (let k = 0; k < level.count; k++) {
    const at = cell(level.x[k] as number, level.y[k] as number);
    if (at >= 0) kept[at] = found.kept[k] as number;
  }
  const { motion } = found;
  const angle = radOfDeg(motion.rotationDeg);
  const shrink = 1 / (motion.scale * 2 ** level.level);
  const cos = shrink * Math.cos(angle);
  const sin = shrink * Math.sin(angle);
  const centreX = template.centroidX + motion.shiftX - crop.originX;
  const centreY = template.centroidY + motion.shiftY - crop.originY;
  for (let i = 0; i < mask.length; i++) {
    if (mask[i] === 0) continue;
    const dx = (i % crop.width) - centreX;
    const dy = Math.floor(i / crop.width) - centreY;
    const at = cell(cos * dx + sin * dy, cos * dy - sin * dx);
    const share = at < 0 ? Number.NaN : (kept[at] as number);
    if (!Number.isNaN(share)) mask[i] = (mask[i] as number) * share;
  }
}

const fraction = (x: number): number => x - Math.round(x);
