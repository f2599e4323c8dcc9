import type { PictureSize } from '../capture/frame.ts';
import { exerciseOf } from '../exercises/catalogue.ts';
import type { ExerciseId } from '../exercises/exercise.ts';
import type { Observation } from '../measure/observation.ts';
import { finishSet, type SetState, startSet, stepSet } from '../measure/set.ts';
import type { SetResult } from '../measure/set-result.ts';
import type { Side } from '../pose/landmarks.ts';

/** What is measured again: a decoded recording is one. */
interface Recorded {
  readonly source: PictureSize;
  readonly exercise: ExerciseId;
  readonly side: Side;
  readonly observations: readonly Observation[];
}

/** The set before its first frame. */
export const setOf = ({ source, exercise, side }: Omit<Recorded, 'observations'>): SetState =>
  startSet({
    exercise: exerciseOf(exercise),
    side,
    size: { width: source.width, height: source.height },
    targetReps: null,
    endsItself: false,
  });

/** Measures a recording as the command line does, frame by frame. */
export const measureRecording = (recorded: Recorded): SetResult =>
  finishSet(recorded.observations.reduce((state, seen) => stepSet(state, seen).state, setOf(recorded)));
