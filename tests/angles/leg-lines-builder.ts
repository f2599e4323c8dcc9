import type { Facing, LegLines, SegmentLine } from '../../src/angles/joint-angle.ts';
import { deg } from '../../src/units.ts';

/** Clockwise on the screen, as y runs down. */
export const line = (directionDeg: number, lengthPx = 100): SegmentLine => ({ directionDeg: deg(directionDeg), lengthPx });

export const legOf = (thighDeg: number, shankDeg: number, footDeg: number): LegLines => ({
  thigh: line(thighDeg),
  shank: line(shankDeg),
  foot: line(footDeg),
});

/** The leg as a mirror shows it. */
export const mirroredLeg = ({ thigh, shank, foot }: LegLines): LegLines => {
  const turned = (l: SegmentLine): SegmentLine => ({ ...l, directionDeg: deg(180 - l.directionDeg) });
  return { thigh: turned(thigh), shank: turned(shank), foot: turned(foot) };
};

export const otherFacing = (facing: Facing): Facing => (facing === 'left' ? 'right' : 'left');
