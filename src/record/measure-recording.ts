import type { PictureSize } from '../capture/frame.ts';
import { exerciseOf } from '../exercises/catalogue.ts';
import type { ExerciseId } from '../exercises/exercise.ts';
import type { ExerciseDefinition } from '../exercises/exercise-definition.ts';
import type { Observation } from '../measure/observation.ts';
import { finishSet, markOnset, type SetSpec, type SetState, startSet, stepSet } from '../measure/set.ts';
import type { SetMeasure } from '../measure/set-measure.ts';
import type { SetResult } from '../measure/set-result.ts';
import { stickerMeasure } from '../measure/sticker-set.ts';
import type { Side } from '../pose/landmarks.ts';
import type { PoseModel } from '../pose/model.ts';
import type { Deg, Ms } from '../units.ts';

/** What is measured again: a decoded recording is one. */
interface Recorded {
  readonly source: PictureSize;
  readonly exercise: ExerciseId | ExerciseDefinition;
  readonly side: Side;
  readonly model: PoseModel | 'stickers';
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

type Known = Pick<Recorded, 'source' | 'exercise' | 'side'>;

const specOf = ({ source, exercise, side }: Known, { kneeLimitDeg, elevationLimitDeg }: SetWishes): SetSpec => ({
  exercise: exerciseOf(exercise),
  side,
  size: { width: source.width, height: source.height },
  targetReps: null,
  endsItself: false,
  ...(kneeLimitDeg === undefined ? {} : { kneeLimitDeg }),
  ...(elevationLimitDeg === undefined ? {} : { elevationLimitDeg }),
});

/** The set before its first frame, by the pose model. */
export const setOf = (recorded: Known, wishes: SetWishes = {}): SetState => startSet(specOf(recorded, wishes));

/** Measures a recording as the command line does, frame by frame. */
export const measureRecording = (recorded: Recorded, wishes: SetWishes = {}): SetResult =>
  recorded.model === 'stickers'
    ? measuredBy(stickerMeasure, recorded, wishes)
    : measuredBy({ startSet, stepSet, markOnset, finishSet }, recorded, wishes);

function measuredBy<S>(measure: SetMeasure<S>, recorded: Recorded, wishes: SetWishes): SetResult {
  let state = measure.startSet(specOf(recorded, wishes));
  for (const seen of recorded.observations) {
    state = measure.stepSet(state, seen).state;
    if (wishes.onsetMs !== undefined && seen.tMs >= wishes.onsetMs) state = measure.markOnset(state, seen.tMs);
  }
  return measure.finishSet(state);
}
