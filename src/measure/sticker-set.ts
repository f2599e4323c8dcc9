import type { Facing } from '../angles/joint-angle.ts';
import { countedFrom } from '../reps/live-counter.ts';
import { type Deg, deg } from '../units.ts';
import type { SetSpec } from './finish.ts';
import type { LiveView, SetEvent } from './live-view.ts';
import type { Observation } from './observation.ts';
import { recounted } from './recounted.ts';
import { advance, markOnset, type SetState, startSet, viewOf } from './set.ts';
import type { SetMeasure } from './set-measure.ts';
import type { SetResult } from './set-result.ts';
import { type LatestAngles, steadied } from './steadied-live.ts';
import { stickerAdvice } from './sticker-advice.ts';
import { facingOfStickers, stickerAngle } from './sticker-angle.ts';
import { measureStickers, type StickerSample } from './sticker-finish.ts';

/** Samples so far, newest first: adding one shares the rest, so that a state never changes once made. */
interface SampleList {
  readonly sample: StickerSample;
  readonly before: SampleList | null;
}

/** A set by stickers under way. Its phases, its counting and its end are those of a set by the pose model; only the angle comes from elsewhere. */
export interface StickerSetState {
  readonly counting: SetState;
  readonly samples: SampleList | null;
  /** Which way the toes point; kept once counting has begun. Null: not yet seen. */
  readonly facing: Facing | null;
  /** The angle at rest as the stickers show it, from which all is counted; null while setting up. */
  readonly zeroDeg: Deg | null;
  /** From the picture's own zero. */
  readonly latest: LatestAngles;
}

const start = (spec: SetSpec): StickerSetState => ({
  counting: startSet({ ...spec, seenBy: 'stickers' }),
  samples: null,
  facing: null,
  zeroDeg: null,
  latest: [],
});

interface StickerStep {
  readonly state: StickerSetState;
  readonly view: LiveView;
  readonly events: readonly SetEvent[];
}

/** Takes the next frame. A lost sticker, or one too far from its neighbours to be it, gives no angle: counting stops until all are back. */
function step(state: StickerSetState, observation: Observation): StickerStep {
  const { exercise } = state.counting.spec;
  const { tMs, stickers = null } = observation;
  const settingUp = state.counting.phase === 'setting-up';
  const facing = (settingUp && stickers && facingOfStickers(stickers, exercise.angle)) || state.facing;
  const shown = facing && stickerAngle(stickers, exercise.angle, facing);
  // One that hides for a moment is guessed at; a guess that could be a movement is none.
  const seen = shown && Math.sqrt(shown.variance) < exercise.rule.noticeDeg ? shown : null;
  const { latest, deg: steady, noticeDeg } = steadied(state.latest, tMs, seen?.deg ?? null, exercise.rule.noticeDeg);
  const angle = steady === null ? null : deg(steady - (state.zeroDeg ?? 0));
  const advice = stickerAdvice(observation, exercise.angle, seen);
  const { spec } = state.counting;
  const noticed: SetState = {
    ...state.counting,
    spec: { ...spec, exercise: { ...exercise, rule: { ...exercise.rule, noticeDeg } } },
    angleDeg: angle,
    seenMs: angle === null ? state.counting.seenMs : tMs,
  };
  const { state: moved, events } = advance(noticed, tMs, angle, advice);
  const next = { ...moved, spec };
  const begun = settingUp && next.phase !== 'setting-up';
  const counting = begun ? fromRest(next) : next;
  const zeroDeg = begun ? next.restDeg : state.zeroDeg;
  const sample: StickerSample = { tMs, stickers };
  return {
    state: { counting, samples: { sample, before: state.samples }, facing, zeroDeg, latest },
    events,
    view: { ...viewOf(counting, zeroDeg === null ? null : counting.angleDeg, advice, null), stickers },
  };
}

/** What was counted from the picture's own zero until now, counted from rest. */
function fromRest(state: SetState): SetState {
  const { restDeg, angleDeg, counter, spec } = state;
  if (restDeg === null || angleDeg === null || counter === null)
    throw new Error('fromRest requires a set that was found ready, got one that was not');
  const sign = spec.exercise.rule.direction === 'rises' ? 1 : -1;
  return { ...state, restDeg: deg(0), angleDeg: deg(angleDeg - restDeg), counter: countedFrom(counter, deg(sign * restDeg)) };
}

/** Ends a set and measures it as a whole. */
function finish({ counting, samples: newest }: StickerSetState): SetResult {
  const samples: StickerSample[] = [];
  for (let at = newest; at; at = at.before) samples.push(at.sample);
  const notes = { foundReadyMs: counting.readyMs, onsetMs: counting.onset?.tMs ?? null };
  return recounted(measureStickers(counting.spec, samples.reverse(), notes), counting.reps);
}

/** A set by stickers, as a session drives it. */
export const stickerMeasure: SetMeasure<StickerSetState> = {
  startSet: start,
  stepSet: step,
  markOnset: (state, tMs) => ({ ...state, counting: markOnset(state.counting, tMs) }),
  finishSet: finish,
};
