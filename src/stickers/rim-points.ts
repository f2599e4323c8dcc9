import type { RgbaPicture, Spot } from './rgba-picture.ts';

/** Directions in which the rim is looked for; more than a small sticker has pixels around it. Chosen. */
export const DIRECTIONS = 40;
/** Profiles reach this far to either side of the rim, px. Chosen: twice the blur of lens and video; farther, shading would move the rim. */
const REACH_PX = 2;
/** Profiles are read in steps of this, px. */
const STEP_PX = 0.25;
/** A step of brightness across the rim smaller than this, grey levels, tells nothing. Chosen. */
const LEAST_STEP = 6;

/** The rim in one direction. */
export interface RimPoint {
  readonly cos: number;
  readonly sin: number;
  /** How far beyond the radius it lies, px. */
  readonly off: number;
  /** Step of brightness across it, grey levels. */
  readonly step: number;
}

/** The rim around a place, as far as it shows there. @param radius px, about where it is looked for */
export function rimAround(picture: RgbaPicture, { x, y }: Spot, radius: number): readonly RimPoint[] {
  const count = Math.round((2 * REACH_PX) / STEP_PX) + 1;
  const found: RimPoint[] = [];
  const profile = new Float64Array(count);
  for (let k = 0; k < DIRECTIONS; k++) {
    const cos = Math.cos((2 * Math.PI * k) / DIRECTIONS);
    const sin = Math.sin((2 * Math.PI * k) / DIRECTIONS);
    let known = true;
    for (let i = 0; i < count && known; i++) {
      const r = radius - REACH_PX + i * STEP_PX;
      const level = brightnessAt(picture, x + r * cos, y + r * sin);
      if (level === null) known = false;
      else profile[i] = level;
    }
    const point = known ? edgeOf(profile) : null;
    if (point) found.push({ cos, sin, ...point });
  }
  return found;
}

/** Where a profile steps: what is missing on one side makes up for what is too much on the other; blur does not move that place. */
function edgeOf(profile: Float64Array): Pick<RimPoint, 'off' | 'step'> | null {
  const ends = Math.floor(profile.length / 4);
  let inner = 0;
  let outer = 0;
  for (let i = 0; i < ends; i++) {
    inner += (profile[i] as number) / ends;
    outer += (profile[profile.length - 1 - i] as number) / ends;
  }
  const step = inner - outer;
  if (Math.abs(step) < LEAST_STEP) return null;
  let sum = 0;
  for (let i = 0; i < profile.length; i++) sum += ((profile[i] as number) - outer) / step;
  const off = (sum - 0.5) * STEP_PX - REACH_PX;
  return Math.abs(off) < REACH_PX ? { off, step } : null;
}

/** Grey level between pixels, bilinear, weights of ITU-R BT.601; null beside the picture. */
function brightnessAt({ width, height, data }: RgbaPicture, x: number, y: number): number | null {
  const x0 = Math.floor(x);
  const y0 = Math.floor(y);
  if (!(x0 >= 0 && y0 >= 0 && x0 + 1 < width && y0 + 1 < height)) return null;
  const p = 4 * (y0 * width + x0);
  const q = p + 4 * width;
  const level = (i: number) => 0.299 * (data[i] as number) + 0.587 * (data[i + 1] as number) + 0.114 * (data[i + 2] as number);
  const [u, v] = [x - x0, y - y0];
  return (1 - v) * ((1 - u) * level(p) + u * level(p + 4)) + v * ((1 - u) * level(q) + u * level(q + 4));
}
