import { jointAngle, type LegLines } from '../angles/joint-angle.ts';
import type { Exercise } from '../exercises/exercise.ts';
import { type LegMotion, SEGMENTS, type Segment } from '../flow/leg-motion.ts';
import { unwrappedNear } from '../signal/angle-wrap.ts';
import { type LiveDirection, stepDirection } from '../signal/live-direction.ts';
import type { Deg, Ms } from '../units.ts';
import { facingOf, type LegSample, legLines } from './leg-sample.ts';

/** The live estimate of the leg: one filter a segment. */
export interface LiveLeg {
  readonly tMs: Ms;
  readonly directions: { readonly [S in Segment]: LiveDirection | null };
  readonly lengths: { readonly [S in Segment]: number };
  readonly motion: LegMotion | null;
  readonly facing: 'left' | 'right' | null;
}

export const startLiveLeg = (tMs: Ms): LiveLeg => ({
  tMs,
  directions: { thigh: null, shank: null, foot: null },
  lengths: { thigh: 0, shank: 0, foot: 0 },
  motion: null,
  facing: null,
});

/** How far a segment turned in the picture since the last frame; null when either frame lacks it or the anchor changed. */
function turnedSince(before: LegMotion | null, now: LegMotion | null, segment: Segment): number | null {
  const a = before?.[segment];
  const b = now?.[segment];
  return a && b && a.anchor === b.anchor ? b.turnDeg - a.turnDeg : null;
}

/** Takes the next frame into the live estimate. */
export function stepLiveLeg(leg: LiveLeg, sample: LegSample, exercise: Exercise): LiveLeg {
  const dtMs = Math.max(0, sample.tMs - leg.tMs);
  const lines = sample.points && legLines(sample.points);
  const directions = { ...leg.directions };
  const lengths = { ...leg.lengths };
  for (const segment of SEGMENTS) {
    const before = leg.directions[segment];
    const line = lines?.[segment];
    const seen = line ? (before ? unwrappedNear(line.directionDeg, before.deg) : line.directionDeg) : null;
    directions[segment] = stepDirection(before, dtMs, seen, turnedSince(leg.motion, sample.motion, segment));
    if (line) lengths[segment] = line.lengthPx;
  }
  const facing = sample.points ? facingOf(sample.points, exercise.posture) : leg.facing;
  return { tMs: sample.tMs, directions, lengths, motion: sample.motion, facing: leg.facing ?? facing };
}

/** The exercise's angle now; null before the leg was seen. */
export function liveAngle({ directions, lengths, facing }: LiveLeg, exercise: Exercise): Deg | null {
  const { thigh, shank, foot } = directions;
  if (!thigh || !shank || !foot || !facing) return null;
  const leg: LegLines = {
    thigh: { directionDeg: thigh.deg, lengthPx: lengths.thigh },
    shank: { directionDeg: shank.deg, lengthPx: lengths.shank },
    foot: { directionDeg: foot.deg, lengthPx: lengths.foot },
  };
  return jointAngle(exercise.angle, leg, facing);
}
