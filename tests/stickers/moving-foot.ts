import type { ToeOrder } from '../../src/stickers/arrange.ts';
import type { Spot } from '../../src/stickers/rgba-picture.ts';
import { TOE_STICKERS } from '../../src/stickers/sticker-name.ts';
import { type Disc, GREEN, type Rgb } from './drawn-picture.ts';

/** A foot in the picture, toes to the left: the arch fixed, the tip turning about the knuckle. */
export interface Foot {
  readonly arch: Spot;
  /** Lengths, px. */
  readonly archToKnuckle: number;
  readonly knuckleToTip: number;
  /** Direction of the foot's line, clockwise from the x axis, deg: 180 for toes to the left. */
  readonly lineDeg: number;
}

export const FOOT: Foot = { arch: { x: 120, y: 70 }, archToKnuckle: 50, knuckleToTip: 26, lineDeg: 176 };

/** Where the stickers are with the toe lifted by `liftDeg`, up positive. */
export function footSpots(liftDeg: number, foot: Foot = FOOT, shift: Spot = { x: 0, y: 0 }): ToeOrder<Spot> {
  const line = (foot.lineDeg * Math.PI) / 180;
  const toe = ((foot.lineDeg + liftDeg) * Math.PI) / 180;
  const arch = { x: foot.arch.x + shift.x, y: foot.arch.y + shift.y };
  const knuckle = { x: arch.x + foot.archToKnuckle * Math.cos(line), y: arch.y + foot.archToKnuckle * Math.sin(line) };
  const tip = { x: knuckle.x + foot.knuckleToTip * Math.cos(toe), y: knuckle.y + foot.knuckleToTip * Math.sin(toe) };
  return { tip, knuckle, arch };
}

/** The stickers as discs. @param before where they were one frame ago, for the blur of half a frame's motion */
export const footDiscs = (
  spots: ToeOrder<Spot>,
  radiusPx: number,
  colours: ToeOrder<Rgb> = { tip: GREEN, knuckle: GREEN, arch: GREEN },
  before: ToeOrder<Spot> = spots,
): readonly Disc[] =>
  TOE_STICKERS.map((name) => ({
    at: spots[name],
    radiusPx,
    colour: colours[name],
    blur: { x: (spots[name].x - before[name].x) / 2, y: (spots[name].y - before[name].y) / 2 },
  }));

/** Lifts of the toe over time: up to `peakDeg` and back, once in `periodMs`. */
export const liftAt = (tMs: number, peakDeg: number, periodMs: number): number =>
  (peakDeg * (1 - Math.cos((2 * Math.PI * tMs) / periodMs))) / 2;
