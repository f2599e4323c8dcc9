import { type Facing, jointAngle, type LegLines } from '../angles/joint-angle.ts';
import type { Exercise } from '../exercises/exercise.ts';
import type { Segment } from '../flow/leg-motion.ts';
import { CREDIBLE_DEG, type DirectionClue, type FusedDirection, fuseDirections } from '../signal/fused-direction.ts';
import { type Deg, deg, type Ms } from '../units.ts';
import { cameraRolls } from './camera-roll.ts';
import type { LegReading } from './leg-reading.ts';
import { facingOf, type LegSample } from './leg-sample.ts';
import { goesOn, type LastPose, poseAt } from './motion-alone.ts';
import { ALWAYS_CREDIBLE, betweenLegs, onOtherLeg } from './other-legs-points.ts';
import { inPosture } from './posture.ts';
import type { AngleSource } from './set-result.ts';

/** The joint's angle in one frame, not smoothed; null where it could not be measured. */
export interface AngleInFrame {
  readonly deg: Deg;
  /** The leg it is the angle of; a segment that the exercise does not use may be missing, with direction 0. */
  readonly leg: LegLines;
  /** Variance of the movement part, deg^2. */
  readonly variance: number;
  readonly source: AngleSource;
  /** What the landmarks of this frame alone say of it; null without them. */
  readonly landmarkDeg: Deg | null;
  /** Knee flexion in the same frame, for the straightness of the leg; null when thigh or shank were not seen. */
  readonly kneeDeg: Deg | null;
}

/**
 * Angles of a finished set, frame by frame, from both sources joined; directions in the picture as the camera stood when the set began.
 * @param levelMs when the set was found ready; null: the first frame's camera is taken as level
 */
export function angleSeries(
  samples: readonly LegSample[],
  exercise: Exercise,
  { usualPx, directionDeg }: LegReading,
  levelMs: Ms | null = null,
): readonly (AngleInFrame | null)[] {
  const rolls = cameraRolls(samples, levelMs);
  const facing = usualFacing(samples, exercise);
  const cluesOf = (segment: Segment): readonly DirectionClue[] =>
    samples.map(({ motion }, i) => {
      const roll = rolls[i] ?? 0;
      const seen = directionDeg[segment][i] ?? null;
      const turn = motion?.[segment];
      return {
        landmarkDeg: seen === null ? null : seen - roll,
        turn: turn ? { ...turn, turnDeg: deg(turn.turnDeg - roll) } : null,
      };
    });
  const seen = { thigh: cluesOf('thigh'), shank: cluesOf('shank'), foot: cluesOf('foot') };
  const clues = exercise.heldLeg ? ownPoints(seen, betweenLegs(samples)) : seen;
  const fused = (segment: Segment) => fuseDirections(clues[segment], exercise.heldLeg ? ALWAYS_CREDIBLE : CREDIBLE_DEG);
  const directions = { thigh: fused('thigh'), shank: fused('shank'), foot: fused('foot') };
  let pose: LastPose | null = null;
  return samples.map((sample, i) => {
    const { tMs, points } = sample;
    if (points) pose = poseAt(tMs, points, exercise);
    if (!pose?.placed || !(points || goesOn(pose, sample, exercise))) return null;
    const used = exercise.segments.flatMap((s) => directions[s][i] ?? []);
    if (used.length < exercise.segments.length) return null;
    // A segment that the exercise does not use may be missing; the angle does not read it.
    const legOf = (direction: (segment: Segment) => number | null | undefined): LegLines => {
      const line = (s: Segment) => ({ directionDeg: deg(direction(s) ?? 0), lengthPx: usualPx[s] });
      return { thigh: line('thigh'), shank: line('shank'), foot: line('foot') };
    };
    const leg = legOf((s) => directions[s][i]?.deg);
    const landmarkOf = (s: Segment) => clues[s][i]?.landmarkDeg ?? null;
    const byLandmarks = exercise.segments.every((s) => landmarkOf(s) !== null);
    const kneeSeen = directions.thigh[i] && directions.shank[i];
    return {
      deg: jointAngle(exercise.angle, leg, facing),
      leg,
      variance: used.reduce((sum, d) => sum + d.variance, 0),
      source: sourceOf(used),
      landmarkDeg: byLandmarks ? jointAngle(exercise.angle, legOf(landmarkOf), facing) : null,
      kneeDeg: kneeSeen ? jointAngle('knee-flexion', leg, facing) : null,
    };
  });
}

type LegClues = { readonly [S in Segment]: readonly DirectionClue[] };

/** Without what is said by points that are the other leg's. */
function ownPoints({ thigh, shank, foot }: LegClues, between: readonly boolean[]): LegClues {
  const other = onOtherLeg(shank, between);
  const own = (clues: readonly DirectionClue[]) => clues.map((clue, i) => (other[i] ? { ...clue, landmarkDeg: null } : clue));
  return { thigh: own(thigh), shank: own(shank), foot: own(foot) };
}

function sourceOf(used: readonly FusedDirection[]): AngleSource {
  if (used.every((d) => d.source === 'flow')) return 'flow';
  return used.every((d) => d.source === 'landmarks') ? 'landmarks' : 'fused';
}

/** Which way the person faces in most frames in which they have taken their place: someone may walk in the other way. */
export function usualFacing(samples: readonly LegSample[], exercise: Pick<Exercise, 'posture'>): Facing {
  let left = 0;
  let right = 0;
  for (const { points } of samples) {
    if (!points || !inPosture(points, exercise.posture)) continue;
    if (facingOf(points, exercise.posture) === 'left') left++;
    else right++;
  }
  return left >= right ? 'left' : 'right';
}
