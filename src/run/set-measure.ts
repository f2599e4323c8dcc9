import type { PictureSize } from '../capture/frame.ts';
import type { Exercise } from '../exercises/exercise.ts';
import type { LiveView, SetEvent } from '../measure/live-view.ts';
import type { Observation } from '../measure/observation.ts';
import type { SetResult } from '../measure/set-result.ts';
import type { Side } from '../pose/landmarks.ts';

/** What is to be measured. */
export interface SetSpec {
  readonly exercise: Exercise;
  readonly side: Side;
  readonly size: PictureSize;
  readonly targetReps: number | null;
}

/** The measurement as a session drives it, with a state of its own: `measure/set.ts` is the real one. */
export interface SetMeasure<S> {
  readonly startSet: (spec: SetSpec) => S;
  readonly stepSet: (
    state: S,
    observation: Observation,
  ) => { readonly state: S; readonly view: LiveView; readonly events: readonly SetEvent[] };
  readonly finishSet: (state: S) => SetResult;
}
