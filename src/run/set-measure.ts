import type { LiveView, SetEvent } from '../measure/live-view.ts';
import type { Observation } from '../measure/observation.ts';
import type { SetSpec } from '../measure/set.ts';
import type { SetResult } from '../measure/set-result.ts';
import type { Ms } from '../units.ts';

/** The measurement as a session drives it, with a state of its own: `measure/set.ts` is the real one. */
export interface SetMeasure<S> {
  readonly startSet: (spec: SetSpec) => S;
  readonly stepSet: (
    state: S,
    observation: Observation,
  ) => { readonly state: S; readonly view: LiveView; readonly events: readonly SetEvent[] };
  /** Notes that symptoms begin. */
  readonly markOnset: (state: S, tMs: Ms) => S;
  readonly finishSet: (state: S) => SetResult;
}
