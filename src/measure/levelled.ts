import { turnedElevation } from '../angles/turned-elevation.ts';
import type { Exercise } from '../exercises/exercise.ts';
import { median } from '../signal/median.ts';
import { type Deg, deg } from '../units.ts';
import type { AngleInFrame } from './angle-series.ts';
import { slopeOfTurn } from './lying-turn.ts';
import type { Movements } from './movements.ts';

/** A lying leg at rest lies level: a level found within this of the horizontal is the hip landmark's offset and the camera's tilt, and is taken out. Chosen. */
const LEVEL_OFFSET_DEG = 15;
/** The same of a foot on the floor: the line from heel to forefoot falls by 10 to 20 degrees, a shoe's by more. Chosen. */
const FLOOR_OFFSET_DEG = 45;

/**
 * Takes the resting level off a lying leg's elevation, and what a turned camera adds to it.
 * @param rough the movements in the elevation as the picture has it
 * @param cameraTurnDeg towards the feet positive
 */
export function levelled(
  frames: readonly (AngleInFrame | null)[],
  exercise: Exercise,
  rough: Movements,
  cameraTurnDeg: Deg,
): readonly (AngleInFrame | null)[] {
  const level = restLevel(exercise, rough, LEVEL_OFFSET_DEG);
  const slope = slopeOfTurn(cameraTurnDeg);
  return frames.map((f) => f && { ...f, deg: turnedElevation(deg(f.deg - level), slope) });
}

/**
 * A foot on the floor does not lie along the picture's horizontal: heel and forefoot have their own heights, and the camera may be rolled. Counted from where
 * it stands, both are out.
 */
export function fromFloor(
  frames: readonly (AngleInFrame | null)[],
  exercise: Exercise,
  rough: Movements,
): readonly (AngleInFrame | null)[] {
  const level = restLevel(exercise, rough, FLOOR_OFFSET_DEG);
  return frames.map((f) => f && { ...f, deg: deg(f.deg - level) });
}

/** The angle at rest, as the picture has it; 0 when that is too far from level to be one. */
function restLevel({ rule }: Exercise, { found, smooth }: Movements, mostDeg: number): number {
  const sign = rule.direction === 'rises' ? 1 : -1;
  const starts = found.map((m) => m.startDeg);
  const level = median(starts.length > 0 ? starts : smooth.filter((v) => v !== null)) ?? 0;
  return Math.abs(level) <= mostDeg ? level * sign : 0;
}
