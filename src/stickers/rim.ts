import { factorise, solveFactored } from '../flow/symmetric-solve.ts';
import type { RgbaPicture, Spot } from './rgba-picture.ts';
import { DIRECTIONS, type RimPoint, rimAround } from './rim-points.ts';

/** Brightness along a rim is thought to be out by no less than this, grey levels: shading, and what video makes of it. Chosen on coded clips: less lets a faint rim outweigh colour. */
const LEAST_SPREAD = 25;
/** Standard error of the centre that colour alone tells, each way, px. Measured on coded clips, rounded. */
const COLOUR_ERROR_PX = 0.25;
/** Standard error of a radius from the usual one, and from what the size by colour tells, px. Chosen. */
const RADIUS_ERROR_PX = 0.1;
const START_ERROR_PX = 0.3;
/** By colour a sticker looks larger than it is: its radius as a share of that diameter. Measured. */
const START_SHARE = 0.48;
/** This share of the rim must be seen at the least. Chosen. */
const LEAST_SHARE = 0.5;
/** A rim whose middle or radius is off by more than this share of the radius is another thing's. Chosen. */
const MOST_SHIFT_SHARE = 0.3;
/** The rim is looked for anew around each new centre, so many times; each time its fit is weighed so often. */
const LOOKS = 4;
const WEIGHINGS = 3;
/** Huber's tuning constant, and the median absolute deviation to a standard one. */
const HUBER = 1.345;
const MAD_TO_SD = 1.4826;

/** A sticker's outline in brightness: a circle, px of the picture. */
export interface Rim {
  readonly at: Spot;
  readonly radiusPx: number;
}

/**
 * A sticker's centre told by its rim in brightness, joined with the one its colour tells. Video keeps colour for two by two pixels and packs it roughly, and leaves it
 * standing where a movement ends; brightness it keeps whole.
 * @param at centre by colour
 * @param diameterPx by colour
 * @param usualPx its usual radius; null: not known yet
 * @returns null where the rim does not show, or is another thing's
 */
export function rimOf(picture: RgbaPicture, at: Spot, diameterPx: number, usualPx: number | null): Rim | null {
  let centre = at;
  const start = usualPx ?? START_SHARE * diameterPx;
  let radius = start;
  for (let round = 0; round < LOOKS; round++) {
    const fit = fitted(rimAround(picture, centre, radius), at, centre, radius, { px: start, sure: usualPx !== null });
    if (!fit) return null;
    centre = { x: centre.x + fit.x, y: centre.y + fit.y };
    radius += fit.radius;
    if (Math.hypot(centre.x - at.x, centre.y - at.y) > MOST_SHIFT_SHARE * start) return null;
    if (Math.abs(radius - start) > MOST_SHIFT_SHARE * start) return null;
  }
  return { at: centre, radiusPx: radius };
}

/** How far centre and radius must go; null when the rim does not tell. */
function fitted(
  rim: readonly RimPoint[],
  at: Spot,
  centre: Spot,
  radius: number,
  usual: { readonly px: number; readonly sure: boolean },
): { readonly x: number; readonly y: number; readonly radius: number } | null {
  if (rim.length < LEAST_SHARE * DIRECTIONS) return null;
  let [x, y, grown] = [0, 0, 0];
  // Neighbours share pixels: they are not as many as they look.
  const alike = Math.max(1, DIRECTIONS / (2 * Math.PI * radius));
  for (let round = 0; round < WEIGHINGS; round++) {
    // What a rim is out by, times its step, is what brightness is out by, alike all around.
    const residual = rim.map((p) => Math.abs(p.step * (p.off - x * p.cos - y * p.sin - grown)));
    const spread = Math.max(LEAST_SPREAD, MAD_TO_SD * ([...residual].sort((a, b) => a - b)[residual.length >> 1] ?? 0));
    const m = new Float64Array(9);
    const v = new Float64Array(3);
    rim.forEach((p, i) => {
      const huber = Math.min(1, (HUBER * spread) / Math.max(1e-9, residual[i] as number));
      const w = (huber * p.step ** 2) / (alike * spread ** 2);
      const row = [p.cos, p.sin, 1];
      for (let a = 0; a < 3; a++) {
        for (let b = 0; b <= a; b++) m[3 * a + b] = (m[3 * a + b] as number) + w * (row[a] as number) * (row[b] as number);
        v[a] = (v[a] as number) + w * (row[a] as number) * p.off;
      }
    });
    const held = 1 / (usual.sure ? RADIUS_ERROR_PX : START_ERROR_PX) ** 2;
    m[8] = (m[8] as number) + held;
    v[2] = (v[2] as number) + held * (usual.px - radius);
    const prior = 1 / COLOUR_ERROR_PX ** 2;
    m[0] = (m[0] as number) + prior;
    m[4] = (m[4] as number) + prior;
    v[0] = (v[0] as number) + prior * (at.x - centre.x);
    v[1] = (v[1] as number) + prior * (at.y - centre.y);
    if (!factorise(m, 3)) return null;
    solveFactored(m, 3, v);
    [x, y, grown] = [v[0] as number, v[1] as number, v[2] as number];
  }
  return { x, y, radius: grown };
}
