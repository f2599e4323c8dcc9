import type { Posture } from '../pose/head-up.ts';
import { median } from '../signal/median.ts';
import { type Deg, deg } from '../units.ts';
import type { BodyPoints, LegSample, OtherSide } from './leg-sample.ts';
import { lyingTurnSeen } from './lying-turn.ts';
import { sittingTurnSeen } from './sitting-turn.ts';

/** A camera turned further than this off the side is named. From the geometry: beyond, a raised leg is off by more than a degree. */
export const TURNED_DEG = 15;
/** Beyond this nothing is measured. From the geometry: an ankle can then be off by 7 degrees and more. */
const TOO_TURNED_DEG = 30;

/** Whether the camera's turn leaves nothing to measure; an unknown one does not. */
export const isTooTurned = (turnDeg: number | null): boolean => turnDeg !== null && Math.abs(turnDeg) > TOO_TURNED_DEG;

/** How far the camera is turned off the side view, towards a sitting person's front or a lying one's feet positive, deg. From one frame's points; a standing person does not tell it. */
export function turnSeen(points: BodyPoints, other: OtherSide, posture: Posture): number | null {
  if (posture === 'standing') return null;
  return posture === 'lying' ? lyingTurnSeen(points, other) : sittingTurnSeen(points, other);
}

/**
 * The camera's turn over many frames.
 * @param samples with the leg at rest
 * @returns null when the far side was never seen, or of a standing person
 */
export function cameraTurn(samples: readonly LegSample[], posture: Posture): Deg | null {
  const turn = median(samples.flatMap(({ points, other }) => (points && other ? (turnSeen(points, other, posture) ?? []) : [])));
  return turn === null ? null : deg(turn);
}
