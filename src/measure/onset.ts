import type { Deg, Ms } from '../units.ts';
import { restLevel } from './rest-level.ts';
import type { MeasuredRep, Onset } from './set-result.ts';

/** No frame nearer than this to the moment: its angle is not known, ms. Chosen: as long as a gap that ends live counting. */
const NEAR_MS = 700;

/** What an onset is looked for in: the set's curve, and what its exercise calls a movement. */
export interface OnsetCurve {
  readonly tMs: readonly number[];
  readonly angleDeg: readonly (Deg | null)[];
  /** 1 when the exercise's angle rises, -1 when it falls. */
  readonly sign: 1 | -1;
  readonly noticeDeg: Deg;
}

/**
 * The onset with the angle of the frame nearest to it; without one where that was not measured, or where the joint was at rest: whoever tells it
 * late, with the leg down again, has not felt it there.
 */
export function onsetIn(onsetMs: Ms | null, { tMs, angleDeg, sign, noticeDeg }: OnsetCurve): Onset | null {
  if (onsetMs === null) return null;
  let nearest: number | null = null;
  const away = (i: number) => Math.abs((tMs[i] as number) - onsetMs);
  angleDeg.forEach((angle, i) => {
    if (angle !== null && away(i) <= NEAR_MS && (nearest === null || away(i) < away(nearest))) nearest = i;
  });
  const at = nearest === null ? null : (angleDeg[nearest] ?? null);
  const rest = restLevel(angleDeg, sign);
  const lifted = at !== null && rest !== null && sign * (at - rest) >= noticeDeg;
  return { tMs: onsetMs, angleDeg: lifted ? at : null };
}

/**
 * Whether a repetition went on past the angle at which symptoms had begun, by more than its own error.
 * @param sign 1 when the exercise's angle rises, -1 when it falls
 */
const isPastOnset = (
  { peakMs, peakDeg, uncertaintyDeg }: Pick<MeasuredRep, 'peakMs' | 'peakDeg' | 'uncertaintyDeg'>,
  onset: Onset | null,
  sign: 1 | -1,
): boolean =>
  onset !== null && onset.angleDeg !== null && peakMs > onset.tMs && sign * (peakDeg - onset.angleDeg) > uncertaintyDeg;

/** The repetition, flagged when it went past the onset. */
export const heedOnset = (rep: MeasuredRep, onset: Onset | null, sign: 1 | -1): MeasuredRep =>
  isPastOnset(rep, onset, sign) ? { ...rep, flags: [...rep.flags, 'past-onset'] } : rep;
