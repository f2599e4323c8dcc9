import type { PictureSize } from '../capture/frame.ts';
import { exerciseOf } from '../exercises/catalogue.ts';
import type { ExerciseId } from '../exercises/exercise.ts';
import type { ExerciseDefinition } from '../exercises/exercise-definition.ts';
import type { Observation } from '../measure/observation.ts';
import { finishSet, markOnset, type SetState, startSet, stepSet } from '../measure/set.ts';
import type { SetResult } from '../measure/set-result.ts';
import type { Side } from '../pose/landmarks.ts';
import type { Deg, Ms } from '../units.ts';

/** What is measured again: a decoded recording is one. */
interface Recorded {
  readonly source: PictureSize;
  readonly exercise: ExerciseId | ExerciseDefinition;
  readonly side: Side;
  readonly observations: readonly Observation[];
}

/** What is known of a set beside its recording. */
export interface SetWishes {
  /** Leg raise: see `SetSpec`. */
  readonly kneeLimitDeg?: Deg;
  /** Nerve glide: see `SetSpec`. */
  readonly elevationLimitDeg?: Deg;
  /** When symptoms began, on the recording's clock. */
  readonly onsetMs?: Ms;
}

/** The set before its first frame. */
export const setOf = (
  { source, exercise, side }: Omit<Recorded, 'observations'>,
  { kneeLimitDeg, elevationLimitDeg }: SetWishes = {},
): SetState =>
  startSet({
    exercise: exerciseOf(exercise),
    side,
    size: { width: source.width, height: source.height },
    targetReps: null,
    endsItself: false,
    ...(kneeLimitDeg === undefined ? {} : { kneeLimitDeg }),
    ...(elevationLimitDeg === undefined ? {} : { elevationLimitDeg }),
  });

/** Measures a recording as the command line does, frame by frame. */
export function measureRecording(recorded: Recorded, wishes: SetWishes = {}): SetResult {
  let state = setOf(recorded, wishes);
  for (const seen of recorded.observations) {
    state = stepSet(state, seen).state;
    if (wishes.onsetMs !== undefined && seen.tMs >= wishes.onsetMs) state = markOnset(state, seen.tMs);
  }
  return finishSet(state);
}
