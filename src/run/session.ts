import type { BetweenFrame, FrameTaken } from '../capture/between-frames.ts';
import type { Exercise } from '../exercises/exercise.ts';
import type { LiveView, SetEvent } from '../measure/live-view.ts';
import type { Observation } from '../measure/observation.ts';
import type { SetSpec } from '../measure/set.ts';
import type { SetMeasure } from '../measure/set-measure.ts';
import type { SetResult } from '../measure/set-result.ts';
import type { HeadTowards } from '../pose/head-up.ts';
import type { Side } from '../pose/landmarks.ts';
import { newId } from '../record/new-id.ts';
import type { SetStore } from '../record/set-store.ts';
import type { StoreError } from '../record/store-error.ts';
import type { SetHeader, StoredSet } from '../record/stored-set.ts';
import { fail, ok, type Result } from '../result.ts';
import type { Ms } from '../units.ts';
import type { FrameSource } from './frame-source.ts';
import { observations } from './observations.ts';
import { breakOf, type SessionBreak } from './session-break.ts';
import { type SetJournal, setJournal } from './set-journal.ts';
import { keepScreenOn } from './wake-lock.ts';

/** The part of the pose client that a session uses. */
export interface FrameObserver {
  readonly begin: (spec: { readonly exercise: Exercise; readonly side: Side; readonly head: HeadTowards }) => Promise<void>;
  /** What was seen in the pictures between, in order of time. */
  readonly follow: (between: readonly BetweenFrame[]) => Promise<readonly Observation[]>;
  /** Takes over and closes `frame.image`, also when it fails. What was seen in the frame. */
  readonly observe: (frame: FrameTaken) => Promise<Observation>;
}

/** Why a session did not end as it should. */
export type SessionError =
  /** Nobody stood ready and nothing moved; nothing was stored. `result` says what was in the way. */
  | { readonly kind: 'nothing-measured'; readonly result: SetResult }
  /**
   * The pictures broke off, or (`not-stored`) all went well but the set is not on the disk. `kept` is what was measured until then, null
   * when there is nothing to keep; `storeError` says why `kept` is not on the disk, null when it is.
   */
  | ((SessionBreak | { readonly kind: 'not-stored' }) & {
      readonly kept: StoredSet | null;
      readonly storeError: StoreError | null;
    });

export interface SessionOptions {
  readonly source: FrameSource;
  readonly client: FrameObserver;
  /** A live source's set ends by itself, a file is watched to its end. */
  readonly spec: Omit<SetSpec, 'endsItself'>;
  readonly head: HeadTowards;
  /** What the stored set says of where it came from. */
  readonly origin: Pick<SetHeader, 'person' | 'source' | 'fileName' | 'model'>;
  /** Null: nothing is stored, as for the command line. */
  readonly store: SetStore | null;
  /** The wall clock, ms since 1970. */
  readonly now: () => number;
  readonly onView: (view: LiveView) => void;
  readonly onEvent: (event: SetEvent) => void;
  /** Something could not be stored yet. The set goes on, and the next write tries it again. Null: that went well. */
  readonly onStoreTrouble: (error: StoreError | null) => void;
  /** Whether the screen stays on by itself while a camera is watched. */
  readonly onScreenKept?: (kept: boolean) => void;
  /** Every observation before it is measured, for whoever keeps a landmark recording. */
  readonly onObservation?: (observation: Observation) => void;
}

export interface Session {
  /** How it ended. Rejects only on a fault of the program; what was counted is stored then too. */
  readonly done: Promise<Result<StoredSet, SessionError>>;
  /** Ends the set as someone does who has had enough: what was measured is kept, as finished. */
  readonly stop: () => void;
  /** Symptoms begin now: noted with the next frame that is measured, since that is the one that is looked at now. */
  readonly markOnset: () => void;
}

/** What the person has said and the measurement has yet to hear. */
interface Wishes {
  onset: boolean;
}

/**
 * Runs a set: frames through the pose model into the measurement and the store. The set is stored from the moment counting begins, each
 * repetition before it is shown, or on a slow disk before the next one can end; a page that closes leaves it interrupted with all of them.
 */
export function startSession<S>(options: SessionOptions, measure: SetMeasure<S>): Session {
  const abort = new AbortController();
  const letScreenGo = options.source.live ? keepScreenOn(options.onScreenKept) : () => undefined;
  const wishes: Wishes = { onset: false };
  const done = run(options, measure, abort.signal, wishes).finally(letScreenGo);
  return {
    done,
    stop: () => abort.abort(),
    markOnset: () => {
      wishes.onset = true;
    },
  };
}

/** A set that is being stored. */
interface Stored {
  readonly header: SetHeader;
  readonly journal: SetJournal;
}

function beginStored({ spec, origin, store, now, onStoreTrouble }: SessionOptions): Stored {
  const startedAt = new Date(now()).toISOString();
  const { exercise, side, targetReps } = spec;
  const own = exercise.definition ? { definition: exercise.definition } : {};
  const header: SetHeader = { id: newId(), schema: 2, startedAt, exercise: exercise.id, side, targetReps, ...origin, ...own };
  const journal = setJournal(store, header, onStoreTrouble);
  journal.begin();
  return { header, journal };
}

async function run<S>(
  options: SessionOptions,
  measure: SetMeasure<S>,
  signal: AbortSignal,
  wishes: Wishes,
): Promise<Result<StoredSet, SessionError>> {
  const { source, client, spec, head, onView, onEvent, onObservation } = options;
  const observer = {
    begin: () => client.begin({ exercise: spec.exercise, side: spec.side, head }),
    follow: (between: readonly BetweenFrame[]) => client.follow(between),
    observe: (frame: FrameTaken) => client.observe(frame),
  };
  let state = measure.startSet({ ...spec, endsItself: source.live });
  let stored: Stored | null = null;
  let broken: SessionBreak | null = null;
  let lastMs: Ms | null = null;
  const hearWishes = () => {
    if (!wishes.onset || lastMs === null) return;
    wishes.onset = false;
    state = measure.markOnset(state, lastMs);
  };
  try {
    for await (const observation of observations(source, observer, signal)) {
      onObservation?.(observation);
      const step = measure.stepSet(state, observation);
      state = step.state;
      lastMs = observation.tMs;
      hearWishes();
      for (const event of step.events) {
        if (event.kind === 'ready' || event.kind === 'rep') stored ??= beginStored(options);
        if (event.kind === 'rep') {
          // The one before is on the disk before this one counts as ended.
          await stored?.journal.settled();
          stored?.journal.add(event.rep);
          await stored?.journal.soonSettled();
        }
        onEvent(event);
      }
      onView(step.view);
      if (step.events.some(({ kind }) => kind === 'ended')) break;
    }
  } catch (cause) {
    broken = breakOf(cause);
    if (!broken) {
      await stored?.journal.end({ state: 'interrupted', result: null });
      throw cause;
    }
    // Whoever stops the set may have closed its source first.
    if (signal.aborted) broken = null;
  }
  hearWishes();
  const result = measure.finishSet(state);
  // After the set more may be found than was counted live.
  if (result.reps.length > 0) stored ??= beginStored(options);
  return conclude(stored, result, broken);
}

async function conclude(
  stored: Stored | null,
  result: SetResult,
  broken: SessionBreak | null,
): Promise<Result<StoredSet, SessionError>> {
  if (!stored) return fail(broken ? { ...broken, kept: null, storeError: null } : { kind: 'nothing-measured', result });
  const state = broken ? 'interrupted' : 'finished';
  const kept: StoredSet = { ...stored.header, state, reps: result.reps, result, edits: [] };
  const written = await stored.journal.end({ state, result });
  const storeError = written.ok ? null : written.error;
  if (broken) return fail({ ...broken, kept, storeError });
  return storeError ? fail({ kind: 'not-stored', kept, storeError }) : ok(kept);
}
