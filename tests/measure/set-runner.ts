import type { LiveView, SetEvent } from '../../src/measure/live-view.ts';
import type { Observation } from '../../src/measure/observation.ts';
import { finishSet, type SetSpec, type SetState, startSet, stepSet } from '../../src/measure/set.ts';
import type { SetResult } from '../../src/measure/set-result.ts';

export interface SetRun {
  readonly state: SetState;
  readonly views: readonly LiveView[];
  readonly events: readonly (SetEvent & { readonly tMs: number })[];
  readonly result: SetResult;
}

/** A whole set from its observations, all that was shown and heard, and its result. */
export function runSet(spec: SetSpec, observations: readonly Observation[], start: SetState = startSet(spec)): SetRun {
  let state = start;
  const views: LiveView[] = [];
  const events: (SetEvent & { readonly tMs: number })[] = [];
  for (const observation of observations) {
    const step = stepSet(state, observation);
    state = step.state;
    views.push(step.view);
    events.push(...step.events.map((e) => ({ ...e, tMs: observation.tMs })));
  }
  return { state, views, events, result: finishSet(state) };
}

export const kindsOf = ({ events }: SetRun): readonly string[] => events.map((e) => e.kind);
