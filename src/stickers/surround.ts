import { type Chroma, type ChromaPatch, chromaDistance } from './chroma.ts';
import type { Spot } from './rgba-picture.ts';

/** The ring that is looked at begins this far outside a sticker's edge, px, and is as wide as half its diameter, at least MIN_RING_PX. Chosen: beyond blur. */
const CLEAR_PX = 3;
const MIN_RING_PX = 3;
/** A cell of the ring this near to the sticker's colour is another sticker, not ground: as a share of the way to the middle of the ring. Chosen. */
const OTHER_STICKER_SHARE = 0.3;

/**
 * The colour around a spot: the mean of a ring, without what has the sticker's own colour.
 * @returns null when nothing of the ring lies in the patch
 */
export function surroundOf(patch: ChromaPatch, at: Spot, diameterPx: number, sticker: Chroma): Chroma | null {
  const inner = diameterPx / 2 + CLEAR_PX;
  const outer = inner + Math.max(MIN_RING_PX, diameterPx / 2);
  const cells: Chroma[] = [];
  const { step, originX, originY, width, height } = patch;
  const toCell = (v: number, origin: number) => (v - origin) / step;
  const y0 = Math.max(0, Math.ceil(toCell(at.y - outer, originY)));
  const y1 = Math.min(height - 1, Math.floor(toCell(at.y + outer, originY)));
  const x0 = Math.max(0, Math.ceil(toCell(at.x - outer, originX)));
  const x1 = Math.min(width - 1, Math.floor(toCell(at.x + outer, originX)));
  for (let y = y0; y <= y1; y++) {
    for (let x = x0; x <= x1; x++) {
      const far = Math.hypot(originX + step * x - at.x, originY + step * y - at.y);
      if (far < inner || far > outer) continue;
      const i = y * width + x;
      cells.push({ redGreen: patch.redGreen[i] as number, yellowBlue: patch.yellowBlue[i] as number });
    }
  }
  const all = meanOf(cells);
  if (all === null) return null;
  const near = OTHER_STICKER_SHARE * chromaDistance(all, sticker);
  return meanOf(cells.filter((c) => chromaDistance(c, sticker) > near)) ?? all;
}

function meanOf(cells: readonly Chroma[]): Chroma | null {
  if (cells.length === 0) return null;
  let redGreen = 0;
  let yellowBlue = 0;
  for (const c of cells) {
    redGreen += c.redGreen;
    yellowBlue += c.yellowBlue;
  }
  return { redGreen: redGreen / cells.length, yellowBlue: yellowBlue / cells.length };
}
