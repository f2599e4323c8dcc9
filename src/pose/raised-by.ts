import { type Deg, degOfRad } from '../units.ts';

interface At {
  readonly x: number;
  readonly y: number;
}

/** The middle of two points. */
export const middleOf = (a: At, b: At): At => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

/**
 * How high a lying person's ankle is above the hips, from the picture's horizontal, up positive, deg in [-90, 90].
 * @param hips the middle of both, so that two legs differ by their own points alone
 */
export const raisedBy = (hips: At, ankle: At): Deg => degOfRad(Math.atan2(hips.y - ankle.y, Math.abs(ankle.x - hips.x)));
