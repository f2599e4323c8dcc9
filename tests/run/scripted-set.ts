import type { Frame, PictureSize } from '../../src/capture/frame.ts';
import type { LiveView, SetEvent } from '../../src/measure/live-view.ts';
import type { Observation } from '../../src/measure/observation.ts';
import type { SetSpec } from '../../src/measure/set.ts';
import type { SetMeasure } from '../../src/measure/set-measure.ts';
import type { MeasuredRep } from '../../src/measure/set-result.ts';
import type { FrameSource } from '../../src/run/frame-source.ts';
import type { FrameObserver } from '../../src/run/session.ts';
import { type Ms, ms } from '../../src/units.ts';
import { rep, result } from '../record/set-builders.ts';

/** A picture that knows how often it was closed. */
export interface FakePicture {
  readonly tMs: number;
  closed: number;
}

export const SIZE: PictureSize = { width: 640, height: 480 };
export const SPEC = { exercise: { id: 'foot-tap' }, side: 'left', size: SIZE, targetReps: null } as unknown as SetSpec;

/** All pictures that a test has made. */
export function pictures(): { readonly all: FakePicture[]; readonly frame: (tMs: number) => Frame } {
  const all: FakePicture[] = [];
  const frame = (tMs: number): Frame => {
    const picture: FakePicture = { tMs, closed: 0 };
    all.push(picture);
    const image = {
      close: () => {
        picture.closed += 1;
      },
    };
    return { tMs: ms(tMs), image: image as unknown as VideoFrame, turn: 0 };
  };
  return { all, frame };
}

/** A file of `count` frames, 33 ms apart; `breaksAt` throws `cause` instead of that frame. */
export function fileSource(
  frame: (tMs: number) => Frame,
  count: number,
  broken?: { readonly at: number; readonly cause: Error },
): FrameSource & { readonly stopped: () => number } {
  let stopped = 0;
  return {
    size: SIZE,
    live: false,
    stop: () => {
      stopped += 1;
    },
    stopped: () => stopped,
    async *frames() {
      for (let i = 0; i < count; i += 1) {
        if (i === broken?.at) throw broken.cause;
        yield frame(i * 33);
      }
    },
  };
}

const nobodyAt = (tMs: Ms): Observation => ({ tMs, landmarks: null, motion: null, camera: null, brightness: null });

/** A client that sees nobody, closes what it is given, and counts how many frames it has at once. */
export function fakeClient(
  wait: (tMs: Ms) => Promise<void> = async () => undefined,
): FrameObserver & { readonly most: () => number } {
  let inWork = 0;
  let most = 0;
  return {
    most: () => most,
    begin: async () => undefined,
    follow: async (between) => between.map(({ tMs }) => nobodyAt(tMs)),
    async observe({ tMs, image }) {
      inWork += 1;
      most = Math.max(most, inWork);
      try {
        await wait(tMs);
        return nobodyAt(tMs);
      } finally {
        image.close();
        inWork -= 1;
      }
    },
  };
}

interface ScriptState {
  readonly seen: readonly Observation[];
  readonly reps: readonly MeasuredRep[];
  readonly onsetMs: Ms | null;
}

/**
 * A measurement that follows a script: ready at frame `readyAt`, a repetition at each of `repsAt`, the end at `endsAt`.
 * It adds no state of its own beyond what it has seen.
 */
export function scriptedMeasure(script: {
  readonly readyAt?: number;
  readonly repsAt?: readonly number[];
  readonly endsAt?: number;
  readonly foundAfterwards?: readonly MeasuredRep[];
}): SetMeasure<ScriptState> {
  const { readyAt, repsAt = [], endsAt, foundAfterwards } = script;
  return {
    startSet: () => ({ seen: [], reps: [], onsetMs: null }),
    stepSet(before, observation) {
      const i = before.seen.length;
      const news = repsAt.filter((at) => at === i).map((_, k) => rep(before.reps.length + k + 1));
      const events: SetEvent[] = [];
      if (i === readyAt) events.push({ kind: 'ready' });
      events.push(...news.map((each) => ({ kind: 'rep', rep: each }) as const));
      if (i === endsAt) events.push({ kind: 'ended', why: 'left' });
      const state = { ...before, seen: [...before.seen, observation], reps: [...before.reps, ...news] };
      const view: LiveView = {
        phase: 'counting',
        angleDeg: null,
        count: state.reps.length,
        partialCount: 0,
        heldMs: null,
        restDeg: null,
        onsetDeg: null,
        advice: [],
        leg: null,
        glide: null,
      };
      return { state, view, events };
    },
    markOnset: (state, tMs) => ({ ...state, onsetMs: state.onsetMs ?? tMs }),
    finishSet: ({ reps, onsetMs }) => ({
      ...result(foundAfterwards ?? reps),
      onset: onsetMs === null ? null : { tMs: onsetMs, angleDeg: null },
    }),
  };
}
