import { watchCameras } from '../../capture/camera.ts';
import { exerciseOf } from '../../exercises/catalogue.ts';
import { finishSet, markOnset, startSet, stepSet } from '../../measure/set.ts';
import { stickerMeasure } from '../../measure/sticker-set.ts';
import type { PersonId } from '../../record/person.ts';
import type { SetStore } from '../../record/set-store.ts';
import type { SetHeader, StoredSet } from '../../record/stored-set.ts';
import { fail, ok, type Result } from '../../result.ts';
import { cameraHold } from '../../run/camera-hold.ts';
import { distrustGpu } from '../../run/faster-delegate.ts';
import type { FrameSource } from '../../run/frame-source.ts';
import { renewedObserver } from '../../run/renewed-observer.ts';
import { type ReturningCamera, returningCamera } from '../../run/returning-camera.ts';
import { type FrameObserver, type SessionError, type SessionOptions, startSession } from '../../run/session.ts';
import { stickerObserver } from '../../run/sticker-client.ts';
import { ms } from '../../units.ts';
import type { Problem, SetHooks, SetPlan } from '../services.ts';
import { stickersOfPlan } from '../set/by-stickers.ts';
import { clients, stickerClient } from './kept-clients.ts';
import { type Opened, openPictures } from './open-pictures.ts';
import { problemOf, problemOfSession } from './problem-of.ts';

/** Somebody who sits down passes through good views on the way: only one that lasts is meant. */
const PLACED_MS = ms(2000);

/** Whoever looks at the set's pictures, kept ready for the next set. */
const observerOf = async (plan: SetPlan, onLoading: SetHooks['onLoading']): Promise<Result<FrameObserver, Problem>> => {
  const stickers = stickersOfPlan(plan);
  if (!stickers) return clients.get(plan.model, onLoading);
  return ok(stickerObserver(stickerClient.get(), stickers));
};

/** Lets the failed one go and starts another; null: there is none to be had, or it can't know what the failed one knew. */
async function anotherObserver(plan: SetPlan): Promise<FrameObserver | null> {
  const stickers = stickersOfPlan(plan);
  if (stickers) {
    stickerClient.drop();
    // Points on bare skin were tapped in the worker that has failed.
    return stickers.kind === 'skin' ? null : stickerObserver(stickerClient.get(), stickers);
  }
  clients.drop();
  distrustGpu(plan.model);
  const another = await clients.get(plan.model, () => undefined);
  return another.ok ? another.value : null;
}

/** A camera is waited for when it goes away in the middle of a set. */
function lasting({ source, reopen }: Pick<Opened, 'source' | 'reopen'>, hooks: SetHooks): FrameSource & Partial<ReturningCamera> {
  if (!reopen) return source;
  return returningCamera(source, {
    reopen,
    onAway: (why) => hooks.onAway(why && (why.kind === 'camera-lost' ? why : problemOf(why))),
    onBreak: hooks.onBreak,
    watchChanges: watchForCamera,
    visible: () => document.visibilityState === 'visible',
    wallMs: Date.now,
  });
}

/** Tells of all that may bring a camera back: one plugged in, the page shown again. */
function watchForCamera(onChange: () => void): () => void {
  const stop = watchCameras(onChange);
  document.addEventListener('visibilitychange', onChange);
  return () => {
    stop();
    document.removeEventListener('visibilitychange', onChange);
  };
}

/** Cameras that sets of this page watch. */
const cameras = cameraHold('locks' in navigator ? navigator.locks : null);

/** Where a set came from, as it is stored. */
function originOf(plan: SetPlan, person: PersonId): Pick<SetHeader, 'person' | 'source' | 'fileName' | 'model'> {
  const { pictures } = plan;
  const origin = { person, source: pictures.kind, model: stickersOfPlan(plan) ? 'stickers' : plan.model } as const;
  return pictures.kind === 'file' ? { ...origin, fileName: pictures.file.name } : origin;
}

/** What is left of a set that broke off, when the disk does not have it. @param store null: it never had */
const unstoredOf = (error: SessionError, store: SetStore | null): StoredSet | null =>
  error.kind !== 'nothing-measured' && (error.storeError || !store) ? error.kept : null;

/** What a set needs; see `runPlan`. */
type RunArguments = Parameters<typeof ranPlan>;

/** Runs a set as `ranPlan` does, and no two in front of one camera in two tabs: both would count the same movements. */
export async function runPlan(...needs: RunArguments): ReturnType<typeof ranPlan> {
  const [{ pictures }] = needs;
  const letGo = pictures.kind === 'camera' ? await cameras.hold(pictures.deviceId) : () => undefined;
  if (!letGo) return fail({ kind: 'camera-other-tab' });
  try {
    return await ranPlan(...needs);
  } finally {
    letGo();
  }
}

/**
 * Opens the pictures and the pose model, or the sticker worker, and runs the set.
 * @param person whose set it is
 * @param store null: this browser stores nothing; the set is measured all the same
 * @param onUnstored hears of a set that was measured but is not on the disk
 * @param wishes tells by its event `onset` that symptoms begin, by `go-on` that pictures are to be had again now
 * @returns null when it was stopped before its pictures came
 */
async function ranPlan(
  plan: SetPlan,
  person: PersonId,
  hooks: SetHooks,
  store: SetStore | null,
  onUnstored: (set: StoredSet) => void,
  signal: AbortSignal,
  wishes: EventTarget,
): Promise<Result<StoredSet | null, Problem>> {
  const starting = observerOf(plan, hooks.onLoading);
  const pictures = await openPictures(plan.pictures);
  if (!pictures.ok) return pictures;
  const { opened } = pictures.value;
  const source = lasting(pictures.value, hooks);
  // Also while the model still loads: a camera goes off at once.
  signal.addEventListener('abort', source.stop, { once: true });
  hooks.onOpened(opened);
  const client = signal.aborted ? null : await starting;
  if (!client || signal.aborted) {
    source.stop();
    return ok(null);
  }
  if (!client.ok) {
    source.stop();
    return client;
  }
  const { observe, follow, begin } = renewedObserver(client.value, {
    renew: () => anotherObserver(plan),
    onRenewing: (renewing) => hooks.onAway(renewing ? { kind: 'pose-failed' } : null),
  });
  const options: SessionOptions = {
    source,
    // Drawn when it is looked at, so that the leg is drawn on the picture it was found in.
    client: {
      begin,
      follow,
      observe: (frame) => {
        hooks.onFrame(frame);
        return observe(frame);
      },
    },
    spec: {
      exercise: exerciseOf(plan.exercise),
      side: plan.side,
      size: opened.size,
      targetReps: plan.targetReps,
      kneeLimitDeg: plan.kneeLimitDeg,
      ...(plan.elevationLimitDeg === undefined ? {} : { elevationLimitDeg: plan.elevationLimitDeg }),
      ...(source.live ? { placedMs: PLACED_MS } : {}),
    },
    head: plan.head,
    origin: originOf(plan, person),
    store,
    now: Date.now,
    onView: hooks.onView,
    onEvent: hooks.onEvent,
    onStoreTrouble: (error) => hooks.onStoreTrouble(error?.kind ?? null),
    onScreenKept: hooks.onScreenKept,
  };
  const session = stickersOfPlan(plan)
    ? startSession(options, stickerMeasure)
    : startSession(options, { startSet, stepSet, markOnset, finishSet });
  signal.addEventListener('abort', session.stop, { once: true });
  wishes.addEventListener('onset', session.markOnset);
  wishes.addEventListener('go-on', () => source.retry?.());
  const outcome = await session.done;
  if (outcome.ok) {
    if (!store) onUnstored(outcome.value);
    return outcome;
  }
  if (outcome.error.kind === 'pose-failed') (stickersOfPlan(plan) ? stickerClient : clients).drop();
  const unstored = unstoredOf(outcome.error, store);
  if (unstored) onUnstored(unstored);
  return fail(problemOfSession(outcome.error, plan.pictures.kind));
}
