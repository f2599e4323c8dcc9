import { type Deg, deg, wrapped } from '../units.ts';
import type { Facing, SegmentLine } from './joint-angle.ts';

/** What tells how far a lying person's head is lifted. */
export interface HeadLines {
  /** From ear to nose. */
  readonly face: SegmentLine;
  /** From shoulder to hip. */
  readonly trunk: SegmentLine;
}

/**
 * How far the head is lifted against the trunk, from the side: the line from ear to nose and the line from shoulder to hip, lifted (the chin towards the
 * chest) positive, deg. 0 with the face square to the trunk; what it is where the head rests is the person's own, and is for the caller to take off.
 * @param facing which way the feet point in the picture
 */
export const headLift = ({ face, trunk }: HeadLines, facing: Facing): Deg => {
  // With the feet to the left the trunk points to 180 and a face square to it up, to 270; lifting turns it counter-clockwise, to the left.
  const square = facing === 'left' ? trunk.directionDeg + 90 : trunk.directionDeg - 90;
  return deg(wrapped(facing === 'left' ? square - face.directionDeg : face.directionDeg - square));
};
