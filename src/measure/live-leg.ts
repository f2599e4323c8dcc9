import { type Facing, jointAngle, type LegLines } from '../angles/joint-angle.ts';
import type { Exercise } from '../exercises/exercise.ts';
import { SEGMENTS, type Segment, type SegmentTurn } from '../flow/leg-motion.ts';
import { CREDIBLE_DEG } from '../signal/fused-direction.ts';
import { type LiveDirection, stepDirection } from '../signal/live-direction.ts';
import { type Deg, deg, type Ms, unwrappedNear, wrapped } from '../units.ts';
import { facingOf, type LegSample, legLines } from './leg-sample.ts';
import { OTHER_LEG_DEG } from './other-legs-points.ts';
import { inPosture } from './posture.ts';

/** A direction that the picture's motion has carried, and by which turn. */
interface Carried {
  readonly tMs: Ms;
  readonly direction: LiveDirection;
  readonly turn: SegmentTurn;
}

/** The live estimate of the leg: one filter a segment. */
export interface LiveLeg {
  readonly tMs: Ms;
  readonly directions: { readonly [S in Segment]: LiveDirection | null };
  readonly lengths: { readonly [S in Segment]: number };
  /** Where the picture's motion last carried each segment, so that a frame or two without it cost nothing. */
  readonly carried: { readonly [S in Segment]: Carried | null };
  readonly facing: Facing | null;
  /** How far the camera has turned the picture by now; directions are kept without it. */
  readonly rollDeg: number;
  /** The same when the set began: what is level there stays level. */
  readonly levelDeg: number;
}

export const startLiveLeg = (tMs: Ms): LiveLeg => ({
  tMs,
  directions: { thigh: null, shank: null, foot: null },
  lengths: { thigh: 0, shank: 0, foot: 0 },
  carried: { thigh: null, shank: null, foot: null },
  facing: null,
  rollDeg: 0,
  levelDeg: 0,
});

const apart = (a: number, b: number): number => Math.abs(wrapped(a - b));

/**
 * Takes the next frame into the live estimate. Points of a held leg that are the other one's, or a foot's that jump, are left out while the motion is followed.
 * @param settled whether the person has taken their place: from then on the facing stays
 */
export function stepLiveLeg(leg: LiveLeg, sample: LegSample, exercise: Exercise, settled: boolean): LiveLeg {
  const { tMs, points, motion, camera } = sample;
  const rollDeg = camera?.rotationDeg ?? leg.rollDeg;
  const lines = points && legLines(points);
  const directions = { ...leg.directions };
  const lengths = { ...leg.lengths };
  const carried = { ...leg.carried };
  const sure = (exercise.heldLeg ?? false) && settled;
  const shank = sure && motion?.shank ? leg.directions.shank : null;
  const strays = shank && lines ? apart(lines.shank.directionDeg - rollDeg, shank.deg) > OTHER_LEG_DEG : false;
  for (const segment of SEGMENTS) {
    const line = lines?.[segment];
    const inPicture = motion?.[segment];
    const turn = inPicture ? { ...inPicture, turnDeg: deg(inPicture.turnDeg - rollDeg) } : null;
    const lineDeg = line ? line.directionDeg - rollDeg : null;
    const anchored = carried[segment];
    // A turn is told against its anchor's picture: it carries on from the last frame that had that anchor.
    const from = turn && anchored?.turn.anchor === turn.anchor ? anchored : null;
    const before = from?.direction ?? leg.directions[segment];
    const dtMs = Math.max(0, tMs - (from?.tMs ?? leg.tMs));
    const astray = strays || (sure && from && lineDeg !== null && apart(lineDeg, from.direction.deg) > CREDIBLE_DEG);
    const seen = astray ? null : lineDeg !== null && before ? unwrappedNear(lineDeg, before.deg) : lineDeg;
    const direction = stepDirection(before, dtMs, seen, turn && from ? turn.turnDeg - from.turn.turnDeg : null);
    directions[segment] = direction;
    if (turn && direction) carried[segment] = { tMs, direction, turn };
    if (line) lengths[segment] = line.lengthPx;
  }
  const placed = points && !(settled && leg.facing) && inPosture(points, exercise.posture);
  const facing = placed ? facingOf(points, exercise.posture) : leg.facing;
  return { tMs, directions, lengths, carried, facing, rollDeg, levelDeg: settled ? leg.levelDeg : rollDeg };
}

/** The exercise's angle now; null before the leg was seen. */
export function liveAngle({ directions, lengths, facing, levelDeg }: LiveLeg, exercise: Exercise): Deg | null {
  const { thigh, shank, foot } = directions;
  if (!thigh || !shank || !foot || !facing) return null;
  const leg: LegLines = {
    thigh: { directionDeg: deg(thigh.deg + levelDeg), lengthPx: lengths.thigh },
    shank: { directionDeg: deg(shank.deg + levelDeg), lengthPx: lengths.shank },
    foot: { directionDeg: deg(foot.deg + levelDeg), lengthPx: lengths.foot },
  };
  return jointAngle(exercise.angle, leg, facing);
}
