import type { Ms } from '../units.ts';
import { heedLimit } from './glide-limit.ts';
import { beginGlide, hearGlides, type LiveGlideState } from './live-glide.ts';
import type { SetEvent, SetPhase } from './live-view.ts';
import type { GlideStop } from './set-result.ts';

/** What has just become of the set. */
interface SetNow {
  readonly tMs: Ms;
  /** Before this frame, and with it. */
  readonly before: SetPhase;
  readonly now: SetPhase;
  /** Why it is to end, as the person said; null: it is not. */
  readonly stopped: GlideStop | null;
  /** Whether the leg's limit ends it; a file is watched to its end. */
  readonly endsItself: boolean;
  /** What else this frame brought. */
  readonly events: readonly SetEvent[];
}

interface GlideStep {
  readonly glide: LiveGlideState;
  /** Why the set ends with this frame; null: it does not. */
  readonly stopped: GlideStop | null;
  readonly events: readonly SetEvent[];
}

/** One frame of a nerve glide besides its count: the cycles that are over, the leg's limit, symptoms that were said to rise. */
export function glideStep(glide: LiveGlideState, { tMs, before, now, stopped, endsItself, events }: SetNow): GlideStep {
  if (before === 'ended' || (now === 'setting-up' && stopped === null)) return { glide, stopped: null, events };
  const begun = before === 'setting-up' ? beginGlide(glide, tMs) : glide;
  const [watched, above] = heedLimit(begun, tMs);
  const why = now === 'ended' ? null : (stopped ?? (above && endsItself ? 'above-limit' : null));
  const ends = why !== null || now === 'ended';
  const [heard, told] = hearGlides(watched, tMs, ends);
  const end: readonly SetEvent[] = why === null ? events.filter(({ kind }) => kind === 'ended') : [{ kind: 'ended', why }];
  return { glide: heard, stopped: why, events: [...events.filter(({ kind }) => kind !== 'ended'), ...told, ...end] };
}
