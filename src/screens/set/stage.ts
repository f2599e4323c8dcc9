import type { LiveView } from '../../measure/live-view.ts';

/**
 * Where a set stands for the person doing it:
 * opening -> setting-up -> ready -> counting <-> lost -> ended, or failed from any of them. Idle: there is no set.
 */
export type Stage = 'idle' | 'opening' | 'setting-up' | 'ready' | 'counting' | 'lost' | 'ended' | 'failed';

/** The stage that a view stands for: counting that has not counted anything yet is being ready. */
export function stageOf(view: LiveView): Stage {
  if (view.phase !== 'counting') return view.phase;
  return view.count + view.partialCount === 0 ? 'ready' : 'counting';
}
