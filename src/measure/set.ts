import { counterAfter, LIVE_GAP_MS, resumeCounter, startCounter, stepCounter } from '../reps/live-counter.ts';
import { liveHold } from '../reps/live-hold.ts';
import { type Deg, deg, type Ms, ms } from '../units.ts';
import { measureSamples } from './finish.ts';
import { heldAdvice } from './glide-limit.ts';
import { glideStep } from './glide-step.ts';
import { type LegSample, sampleOf } from './leg-sample.ts';
import { glideView, seeGlide } from './live-glide.ts';
import { liveAngle, startLiveLeg, stepLiveLeg } from './live-leg.ts';
import type { LegDrawing, LiveView, SetEvent, ViewAdvice } from './live-view.ts';
import { goesOn, poseAt } from './motion-alone.ts';
import type { Observation } from './observation.ts';
import { heedOnset } from './onset.ts';
import { HAND_DOWN, type HandState, handRaised, stepHand } from './raised-hand.ts';
import { recounted } from './recounted.ts';
import { liveRep } from './rep-of.ts';
import type { SetResult } from './set-result.ts';
import type { Seen, SetState } from './set-state.ts';
import { viewAdvice } from './view-advice.ts';

export type { SetSpec } from './finish.ts';
export { type SetState, startSet } from './set-state.ts';

/** Nobody to be seen for this long after at least one repetition: the person has got up and the set is over. Chosen. */
const LEFT_MS = 6000;
/** After the last repetition of the dose the set ends when this has passed without another. Chosen. */
const DONE_MS = 2000;

/** What one frame did to a set. */
export interface SetStep {
  readonly state: SetState;
  readonly view: LiveView;
  readonly events: readonly SetEvent[];
}

/** Takes the next frame. Frames come in order of time; the same frames give the same set, one by one or all at once. */
export function stepSet(state: SetState, observation: Observation): SetStep {
  const { spec } = state;
  const sample = sampleOf(observation, spec.side);
  const leg = stepLiveLeg(state.leg ?? startLiveLeg(observation.tMs), sample, spec.exercise, state.phase !== 'setting-up');
  const here = seenIn(state, observation, sample);
  const angle = here?.placed ? liveAngle(leg, spec.exercise) : null;
  const noticed: SetState = {
    ...state,
    samples: { sample, before: state.samples },
    leg,
    seen: here ?? state.seen,
    angleDeg: angle,
    seenMs: angle === null ? state.seenMs : observation.tMs,
    glide: state.glide && seeGlide(state.glide, { sample, leg, footDeg: angle }),
  };
  const advice = here?.advice ?? viewAdvice(observation, spec.exercise, spec.side, spec.size);
  const { state: next, events } = glideOn(noticed, advance(noticed, observation.tMs, angle, advice), observation.tMs);
  const [hand, raised] = handIn(state, observation);
  const heard: readonly SetEvent[] = raised ? [...events, { kind: 'hand' }] : events;
  return { state: { ...next, hand }, events: heard, view: viewOf(next, angle, advice, here?.points ?? null) };
}

/** Whether a hand is up; before the set and after it that says nothing, and a frame without a pose changes nothing. */
function handIn({ spec, hand, phase }: SetState, { landmarks, tMs }: Observation): readonly [HandState, boolean] {
  if (phase === 'setting-up' || phase === 'ended') return [HAND_DOWN, false];
  return landmarks ? stepHand(hand, tMs, handRaised(landmarks, spec.exercise)) : [hand, false];
}

/** What this frame's pose tells, or the last one's where the picture's motion goes on from it; null: nobody is there. */
function seenIn({ spec, seen }: SetState, observation: Observation, sample: LegSample): Seen | null {
  const { tMs, points } = sample;
  if (!points) return seen && goesOn(seen, sample, spec.exercise) ? seen : null;
  const advice = viewAdvice(observation, spec.exercise, spec.side, spec.size);
  return { ...poseAt(tMs, points, spec.exercise), points, advice };
}

/**
 * Notes that symptoms begin at `tMs`, the time of the newest frame. The angle then is kept as it is known live, if the joint is not at rest, and found
 * again once the set is over. Symptoms begin once in a set: the first word stands. In a nerve glide they end it, with the next frame.
 */
export const markOnset = (state: SetState, tMs: Ms): SetState =>
  state.onset
    ? state
    : {
        ...state,
        onset: { tMs, angleDeg: state.counter?.phase === 'high' ? state.angleDeg : null },
        stopped: state.glide ? 'symptoms' : null,
      };

type Advanced = Pick<SetStep, 'state' | 'events'>;

/** Where a set goes with the angle of the next frame, null when it was not measured; whatever the angle was measured from. */
export function advance(state: SetState, tMs: Ms, angle: Deg | null, advice: readonly ViewAdvice[]): Advanced {
  switch (state.phase) {
    case 'setting-up':
      return settleIn(state, tMs, angle, advice);
    case 'counting':
      return angle === null ? missing(state, tMs) : count(state, tMs, angle);
    case 'lost': {
      if (angle === null) return missing(state, tMs);
      const counter = state.counter && resumeCounter(state.counter, tMs, signed(state, angle));
      return { state: { ...state, phase: 'counting', counter }, events: [{ kind: 'found' }] };
    }
    case 'ended':
      return { state, events: [] };
    default:
      return state.phase satisfies never;
  }
}

/** A nerve glide besides its count. */
function glideOn({ glide, phase, stopped }: SetState, { state, events }: Advanced, tMs: Ms): Advanced {
  if (!glide) return { state, events };
  const { endsItself } = state.spec;
  const step = glideStep(glide, { tMs, before: phase, now: state.phase, stopped, endsItself, events });
  const ended = step.stopped === null ? {} : { phase: 'ended' as const, stopped: step.stopped };
  return { state: { ...state, glide: step.glide, ...ended }, events: step.events };
}

const signed = ({ spec }: SetState, angle: Deg): Deg => (spec.exercise.rule.direction === 'rises' ? angle : deg(-angle));

function settleIn(state: SetState, tMs: Ms, angle: Deg | null, advice: readonly ViewAdvice[]): Advanced {
  const { readyMs, stillDeg } = state.spec.exercise.rule;
  const held = state.glide ? heldAdvice(state.glide) : [];
  if (angle === null || advice.length + held.length > 0)
    return { state: { ...state, recent: [], placedSinceMs: null }, events: [] };
  const placedSinceMs = state.placedSinceMs ?? tMs;
  let recent = [...state.recent, { tMs, deg: angle }];
  const spread = (list: typeof recent) => Math.max(...list.map((r) => r.deg)) - Math.min(...list.map((r) => r.deg));
  while (spread(recent) > stillDeg) recent = recent.slice(1);
  const first = recent[0];
  const placed = tMs - placedSinceMs >= (state.spec.placedMs ?? 0);
  if (!placed || !first || tMs - first.tMs < readyMs) return { state: { ...state, recent, placedSinceMs }, events: [] };
  return {
    state: {
      ...state,
      phase: 'counting',
      recent: [],
      placedSinceMs: null,
      restDeg: deg(recent.reduce((sum, each) => sum + each.deg, 0) / recent.length),
      readyMs: tMs,
      counter: counterAfter(
        recent.filter((r) => tMs - r.tMs <= readyMs).map((r) => ({ tMs: r.tMs, deg: signed(state, r.deg) })),
        state.spec.exercise.rule,
      ),
    },
    events: [{ kind: 'ready' }],
  };
}

function count(state: SetState, tMs: Ms, angle: Deg): Advanced {
  const { spec } = state;
  const started = state.counter ?? startCounter(tMs, signed(state, angle));
  const [counter, movement] = stepCounter(started, tMs, signed(state, angle), spec.exercise.rule);
  if (!movement) return ended({ ...state, counter }, tMs);
  // What was on its way back when the set was found ready is none of the set's.
  if (state.readyMs !== null && movement.peakMs < state.readyMs) {
    const { ranges, usualDeg } = started;
    return { state: { ...state, counter: { ...counter, ranges, usualDeg } }, events: [] };
  }
  const counted = liveRep(movement, state.reps.length + 1, spec);
  const rep = heedOnset(counted, state.onset, spec.exercise.rule.direction === 'rises' ? 1 : -1);
  const reps = [...state.reps, rep];
  const count = state.count + (rep.complete ? 1 : 0);
  // A movement that a gap has cut may seem to begin high: only a complete one tells anew where the joint rests.
  const restDeg = rep.complete ? rep.startDeg : state.restDeg;
  return { state: { ...state, counter, reps, count, restDeg, lastRepMs: tMs }, events: [{ kind: 'rep', rep }] };
}

/** Whether the dose is done and nothing more comes. */
function ended(state: SetState, tMs: Ms): Advanced {
  const { targetReps, endsItself } = state.spec;
  const done = endsItself && targetReps !== null && state.count >= targetReps;
  if (!done || state.lastRepMs === null || tMs - state.lastRepMs < DONE_MS) return { state, events: [] };
  return { state: { ...state, phase: 'ended' }, events: [{ kind: 'ended', why: 'target-reached' }] };
}

function missing(state: SetState, tMs: Ms): Advanced {
  const goneMs = ms(tMs - (state.seenMs ?? tMs));
  if (state.spec.endsItself && goneMs >= LEFT_MS && state.reps.length > 0) {
    return { state: { ...state, phase: 'ended' }, events: [{ kind: 'ended', why: 'left' }] };
  }
  if (state.phase === 'lost' || goneMs < LIVE_GAP_MS) return { state, events: [] };
  return { state: { ...state, phase: 'lost' }, events: [{ kind: 'lost' }] };
}

/** What a screen shows of a set. */
export const viewOf = (state: SetState, angle: Deg | null, advice: readonly ViewAdvice[], leg: LegDrawing | null): LiveView => ({
  phase: state.phase,
  angleDeg: angle,
  count: state.count,
  partialCount: state.reps.length - state.count,
  restDeg: state.restDeg,
  onsetDeg: state.onset?.angleDeg ?? null,
  heldMs: state.phase === 'counting' && state.counter && angle !== null ? liveHold(state.counter) : null,
  advice: state.phase === 'setting-up' ? adviceBefore(state, advice) : advice,
  leg,
  glide: state.glide && glideView(state.glide),
});

function adviceBefore({ glide }: SetState, advice: readonly ViewAdvice[]): readonly ViewAdvice[] {
  const all = advice.length === 0 && glide ? heldAdvice(glide) : advice;
  return all.length === 0 ? ['hold-still'] : all;
}

/** Ends a set and measures it as a whole: smoothing without lag, thresholds from the person's own range over all of it. What was counted otherwise live is marked. */
export function finishSet(state: SetState): SetResult {
  const samples: LegSample[] = [];
  for (let at = state.samples; at; at = at.before) samples.push(at.sample);
  const notes = { foundReadyMs: state.readyMs, onsetMs: state.onset?.tMs ?? null, stopped: state.stopped };
  return recounted(measureSamples(state.spec, samples.reverse(), notes), state.reps);
}
