import type { Ms } from '../units.ts';
import type { LiveView, SetEvent } from './live-view.ts';
import type { Observation } from './observation.ts';
import type { SetSpec } from './set.ts';
import type { SetResult } from './set-result.ts';

/** The measurement as a session drives it, with a state of its own: `set.ts` by the pose model, `sticker-set.ts` by stickers. */
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
