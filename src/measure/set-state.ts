import type { CounterState } from '../reps/live-counter.ts';
import type { Deg, Ms } from '../units.ts';
import type { SetSpec } from './finish.ts';
import type { LegSample } from './leg-sample.ts';
import { type LiveGlideState, startLiveGlide } from './live-glide.ts';
import type { LiveLeg } from './live-leg.ts';
import type { LegDrawing, SetPhase, ViewAdvice } from './live-view.ts';
import type { LastPose } from './motion-alone.ts';
import { HAND_DOWN, type HandState } from './raised-hand.ts';
import type { GlideStop, MeasuredRep, Onset } from './set-result.ts';

/** Samples so far, newest first: adding one shares the rest, so that a state never changes once made. */
interface SampleList {
  readonly sample: LegSample;
  readonly before: SampleList | null;
}

/** What the last pose told, for the frames that have none. */
export interface Seen extends LastPose {
  readonly points: LegDrawing;
  readonly advice: readonly ViewAdvice[];
}

/**
 * A set under way.
 *
 *   setting-up --(posture right and view good for placedMs, angle still for readyMs)--> counting <--> lost
 *   counting --(target reached and still, or the person has left; only a set that ends itself)--> ended
 */
export interface SetState {
  readonly spec: SetSpec;
  readonly samples: SampleList | null;
  readonly phase: SetPhase;
  readonly leg: LiveLeg | null;
  /** Null before the first pose. */
  readonly seen: Seen | null;
  readonly counter: CounterState | null;
  readonly reps: readonly MeasuredRep[];
  /** How many of them are complete. */
  readonly count: number;
  /** Angles of the last readyMs, oldest first: the stillness before the start. */
  readonly recent: readonly { readonly tMs: Ms; readonly deg: Deg }[];
  /** Since when posture and view have been right; null: they are not. */
  readonly placedSinceMs: Ms | null;
  /** Where the joint rests: as it was found ready, then where the last complete repetition began. Null before. */
  readonly restDeg: Deg | null;
  /** When counting began; null before. */
  readonly readyMs: Ms | null;
  /** When the leg was last measured. */
  readonly seenMs: Ms | null;
  /** When the last movement came back. */
  readonly lastRepMs: Ms | null;
  /** The live angle of the newest frame; null when not measured. */
  readonly angleDeg: Deg | null;
  /** Where symptoms began, in the live angle; null: not yet. */
  readonly onset: Onset | null;
  /** Whether a hand is up. */
  readonly hand: HandState;
  /** Null for all exercises but the nerve glide. */
  readonly glide: LiveGlideState | null;
  /** Why a set of glides is to end, or has ended, before its dose. */
  readonly stopped: GlideStop | null;
}

/** A set before its first frame. */
export const startSet = (spec: SetSpec): SetState => ({
  spec,
  samples: null,
  phase: 'setting-up',
  leg: null,
  seen: null,
  counter: null,
  reps: [],
  count: 0,
  recent: [],
  placedSinceMs: null,
  restDeg: null,
  readyMs: null,
  seenMs: null,
  lastRepMs: null,
  angleDeg: null,
  onset: null,
  hand: HAND_DOWN,
  glide: spec.exercise.id === 'nerve-glide' ? startLiveGlide(spec) : null,
  stopped: null,
});
