import { type Facing, jointAngle, type LegLines, type SegmentLine } from '../angles/joint-angle.ts';
import { squaredDirection } from '../angles/turned-line.ts';
import type { Exercise } from '../exercises/exercise.ts';
import type { Deg } from '../units.ts';
import type { AngleInFrame } from './angle-series.ts';

/** Below this turn the picture shortens by under 1 %, and the turn itself is not known better than that. Chosen. */
const SQUARED_FROM_DEG = 8;

/** The angles of a person as a camera square on would have seen them; null when this one stands square enough. @param fromDeg what is square enough */
export function squared(
  frames: readonly (AngleInFrame | null)[],
  { angle }: Pick<Exercise, 'angle'>,
  facing: Facing,
  cameraTurnDeg: Deg | null,
  fromDeg: number = SQUARED_FROM_DEG,
): readonly (AngleInFrame | null)[] | null {
  if (cameraTurnDeg === null || Math.abs(cameraTurnDeg) < fromDeg) return null;
  const line = ({ directionDeg, lengthPx }: SegmentLine): SegmentLine => ({
    directionDeg: squaredDirection(directionDeg, cameraTurnDeg),
    lengthPx,
  });
  const leg = ({ thigh, shank, foot }: LegLines): LegLines => ({ thigh: line(thigh), shank: line(shank), foot: line(foot) });
  return frames.map((f) => f && { ...f, deg: jointAngle(angle, leg(f.leg), facing) });
}
