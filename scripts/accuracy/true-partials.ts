import type { ExerciseId } from '../../src/exercises/exercise.ts';
import type { ClipWithTruth, Truth } from './clip-with-truth.ts';

/** A rise of this much between two movements that count is one that was meant not to: the clips' partial ones reach 4 to 10 degrees. */
export const PARTIAL_DEG = 3;
/** Back within this of where it came from, it is over. */
const BACK_DEG = 1;

/** The joint's true angle in the exercise's own direction. */
const ANGLE: Readonly<Record<ExerciseId, (frame: Truth['frames'][number]) => number>> = {
  'foot-tap': (frame) => frame.ankleDeg,
  'leg-raise': (frame) => frame.legElevationDeg,
  'nerve-glide': (frame) => -frame.ankleDeg,
  'heel-stand': (frame) => frame.ankleDeg,
  'knee-straighten': (frame) => -frame.kneeFlexionDeg,
  'toe-lift': (frame) => frame.toeInPictureDeg ?? 0,
};

/**
 * How many partial movements are truly in a clip: its list holds only those that count, so these are the rises of the true angle between them,
 * above the line from where the pause begins to where it ends.
 */
export function truePartials({ exercise, truth }: Pick<ClipWithTruth, 'exercise' | 'truth'>): number {
  const { reps, frames } = truth;
  const ends = [Number.NEGATIVE_INFINITY, ...reps.map((rep) => rep.endMs)];
  const starts = [...reps.map((rep) => rep.startMs), Number.POSITIVE_INFINITY];
  const pauses = ends.map((end, i) => frames.filter(({ tMs }) => tMs >= end && tMs <= (starts[i] ?? end)));
  return pauses.reduce((sum, pause) => sum + risesIn(pause.map(ANGLE[exercise])), 0);
}

function risesIn(angles: readonly number[]): number {
  const first = angles[0] ?? 0;
  const slope = ((angles.at(-1) ?? 0) - first) / Math.max(1, angles.length - 1);
  let rises = 0;
  let up = false;
  angles.forEach((angle, i) => {
    const above = angle - first - slope * i;
    if (!up && above > PARTIAL_DEG) rises += 1;
    if (above > PARTIAL_DEG) up = true;
    if (above < BACK_DEG) up = false;
  });
  return rises;
}
