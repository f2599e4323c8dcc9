import { turnedElevation } from '../angles/turned-elevation.ts';
import type { Exercise } from '../exercises/exercise.ts';
import { median } from '../signal/median.ts';
import { type Deg, deg } from '../units.ts';
import type { AngleInFrame } from './angle-series.ts';
import type { LegSample } from './leg-sample.ts';
import { lyingTurn, slopeOfTurn } from './lying-turn.ts';
import type { Movements } from './movements.ts';

/** A lying leg at rest lies level: a level found within this of the horizontal is the hip landmark's offset and the camera's tilt, and is taken out. Chosen. */
const LEVEL_OFFSET_DEG = 15;

/** A lying leg's elevation from its own rest, and the camera's turn that was taken into account. */
export interface Levelled {
  readonly frames: readonly (AngleInFrame | null)[];
  /** Towards the feet positive; null where it could not be seen. */
  readonly cameraTurnDeg: Deg | null;
}

/**
 * Takes the resting level off a lying leg's elevation, and what a turned camera adds to it.
 * @param rough the movements in the elevation as the picture has it
 */
export function levelled(
  samples: readonly LegSample[],
  frames: readonly (AngleInFrame | null)[],
  exercise: Exercise,
  rough: Movements,
): Levelled {
  const level = restLevel(exercise, rough);
  const resting = samples.filter(({ tMs }) => !rough.found.some((m) => tMs >= m.startMs && tMs <= m.endMs));
  const cameraTurnDeg = lyingTurn(resting.length > 0 ? resting : samples);
  const slope = slopeOfTurn(cameraTurnDeg ?? deg(0));
  return {
    frames: frames.map((f) => f && { ...f, deg: turnedElevation(deg(f.deg - level), slope) }),
    cameraTurnDeg,
  };
}

/** The elevation of the leg at rest, as the picture has it; 0 when that is too far from level to be one. */
function restLevel({ rule }: Exercise, { found, smooth }: Movements): number {
  const sign = rule.direction === 'rises' ? 1 : -1;
  const starts = found.map((m) => m.startDeg);
  const level = median(starts.length > 0 ? starts : smooth.filter((v) => v !== null)) ?? 0;
  return Math.abs(level) <= LEVEL_OFFSET_DEG ? level * sign : 0;
}
