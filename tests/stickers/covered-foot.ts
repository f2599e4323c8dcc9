import type { ToeOrder } from '../../src/stickers/arrange.ts';
import type { RgbaPicture, Spot } from '../../src/stickers/rgba-picture.ts';
import { TOE_STICKERS } from '../../src/stickers/sticker-name.ts';
import { texture } from '../flow/synthetic-picture.ts';
import { GRAIN, GREEN, RED_SKIN, type Rgb, SKIN } from './drawn-picture.ts';
import { FOOT, type Foot, footSpots } from './moving-foot.ts';

/** A foot with marked skin, large enough for its marks to be followed. */
export const MARKED_FOOT: Foot = { ...FOOT, arch: { x: 170, y: 80 }, archToKnuckle: 70, knuckleToTip: 40, lineDeg: 178 };
export const SIZE = { width: 240, height: 160 };
export const RADIUS_PX = 6;

/** Something long with round ends that lies over the foot: a finger, a hem. */
export interface Cover {
  readonly from: Spot;
  readonly to: Spot;
  readonly radiusPx: number;
}

/** One frame of a foot that may be covered. */
export interface CoveredFrame {
  readonly liftDeg: number;
  readonly shift?: Spot;
  readonly covers?: readonly Cover[];
  /** Another dot of the stickers' size, before all else. */
  readonly dot?: Spot | null;
  readonly dotColour?: Rgb;
  readonly colours?: ToeOrder<Rgb>;
  /** How much darker and lighter the skin's marks are, as a share of its brightness; 0 for skin without any. */
  readonly marks?: number;
  readonly noise?: number;
  readonly light?: number;
  readonly seed?: number;
}

export const coveredSpots = ({ liftDeg, shift = { x: 0, y: 0 } }: Pick<CoveredFrame, 'liftDeg' | 'shift'>): ToeOrder<Spot> =>
  footSpots(liftDeg, MARKED_FOOT, shift);

const SKIN_SIDE = 256;
/** Marks of skin, from -1 to 1, at whole pixels; wraps round. */
const surfaceOf = (seed: number): Float32Array => {
  const at = texture(seed);
  return Float32Array.from({ length: SKIN_SIDE ** 2 }, (_, i) => (at(i % SKIN_SIDE, Math.floor(i / SKIN_SIDE)) - 125) / 60);
};
const FOOT_SKIN = surfaceOf(11);
const FINGER_SKIN = surfaceOf(12);

const WRAP = SKIN_SIDE - 1;
const marked = (surface: Float32Array, i: number, j: number): number => surface[(j & WRAP) * SKIN_SIDE + (i & WRAP)] as number;

function sample(surface: Float32Array, x: number, y: number): number {
  const x0 = Math.floor(x);
  const y0 = Math.floor(y);
  const fx = x - x0;
  const fy = y - y0;
  const above = marked(surface, x0, y0) * (1 - fx) + marked(surface, x0 + 1, y0) * fx;
  const below = marked(surface, x0, y0 + 1) * (1 - fx) + marked(surface, x0 + 1, y0 + 1) * fx;
  return above * (1 - fy) + below * fy;
}

/** How far a point lies from a line between two. */
function fromLine(x: number, y: number, { from, to }: Cover): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const share = Math.min(1, Math.max(0, ((x - from.x) * dx + (y - from.y) * dy) / Math.max(1e-9, dx * dx + dy * dy)));
  return Math.hypot(x - from.x - share * dx, y - from.y - share * dy);
}

const shareOfDisc = (far: number, radius: number): number => Math.min(1, Math.max(0, radius - far + 0.5));

/** Draws the frame: skin that moves with the foot, beyond the knuckle with the toe, the stickers on it, what covers it, and a dot before all. */
export function drawCovered(frame: CoveredFrame): RgbaPicture {
  const {
    shift = { x: 0, y: 0 },
    covers = [],
    dot = null,
    dotColour = GREEN,
    marks = 0.15,
    noise = 2,
    light = 1,
    seed = 1,
  } = frame;
  const colours = frame.colours ?? { tip: GREEN, knuckle: GREEN, arch: GREEN };
  const spots = coveredSpots(frame);
  const turn = (frame.liftDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const { knuckle } = spots;
  const crease = knuckle.x - 9;
  const { width, height } = SIZE;
  const data = new Uint8ClampedArray(4 * width * height);
  const colour: [number, number, number] = [0, 0, 0];
  const over = (own: Rgb, share: number, bright = 1): void => {
    for (let c = 0; c < 3; c++) colour[c] = (colour[c] as number) * (1 - share) + (own[c] as number) * bright * share;
  };
  let grain = (seed * 7919) % GRAIN.length;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const dx = x - knuckle.x;
      const dy = y - knuckle.y;
      const backX = knuckle.x + cos * dx + sin * dy;
      const backY = knuckle.y - sin * dx + cos * dy;
      const onToe = backX < crease && x < crease;
      const mark = 1 + marks * sample(FOOT_SKIN, (onToe ? backX : x) - shift.x, (onToe ? backY : y) - shift.y);
      for (let c = 0; c < 3; c++) colour[c] = (SKIN[c] as number) * mark;
      for (const name of TOE_STICKERS) {
        const share = shareOfDisc(Math.hypot(x - spots[name].x, y - spots[name].y), RADIUS_PX);
        if (share > 0) over(colours[name], share);
      }
      for (const cover of covers) {
        const share = shareOfDisc(fromLine(x, y, cover), cover.radiusPx);
        if (share > 0) over(RED_SKIN, share, 1 + marks * sample(FINGER_SKIN, x - cover.from.x, y - cover.from.y));
      }
      if (dot) over(dotColour, shareOfDisc(Math.hypot(x - dot.x, y - dot.y), RADIUS_PX));
      const i = 4 * (y * width + x);
      for (let c = 0; c < 3; c++) {
        data[i + c] = (colour[c] as number) * light + noise * (GRAIN[grain] as number);
        grain = grain + 1 === GRAIN.length ? 0 : grain + 1;
      }
      data[i + 3] = 255;
    }
  }
  return { width, height, data };
}
