import { exerciseOf } from '../../exercises/catalogue.ts';
import { finishSet, markOnset, startSet, stepSet } from '../../measure/set.ts';
import { stickerMeasure } from '../../measure/sticker-set.ts';
import type { PersonId } from '../../record/person.ts';
import type { SetStore } from '../../record/set-store.ts';
import type { SetHeader, StoredSet } from '../../record/stored-set.ts';
import { fail, ok, type Result } from '../../result.ts';
import { type FrameObserver, type SessionError, type SessionOptions, startSession } from '../../run/session.ts';
import { stickerObserver } from '../../run/sticker-client.ts';
import { ms } from '../../units.ts';
import type { Problem, SetHooks, SetPlan } from '../services.ts';
import { stickersOfPlan } from '../set/by-stickers.ts';
import { clients, stickerClient } from './kept-clients.ts';
import { openPictures } from './open-pictures.ts';
import { problemOfSession } from './problem-of.ts';

/** Somebody who sits down passes through good views on the way: only one that lasts is meant. */
const PLACED_MS = ms(2000);

/** Whoever looks at the set's pictures, kept ready for the next set. */
const observerOf = async (plan: SetPlan, onLoading: SetHooks['onLoading']): Promise<Result<FrameObserver, Problem>> => {
  const stickers = stickersOfPlan(plan);
  if (!stickers) return clients.get(plan.model, onLoading);
  const client = stickerClient.get();
  return client.ok ? ok(stickerObserver(client.value, stickers)) : client;
};

/** Where a set came from, as it is stored. */
function originOf(plan: SetPlan, person: PersonId): Pick<SetHeader, 'person' | 'source' | 'fileName' | 'model'> {
  const { pictures } = plan;
  const origin = { person, source: pictures.kind, model: stickersOfPlan(plan) ? 'stickers' : plan.model } as const;
  return pictures.kind === 'file' ? { ...origin, fileName: pictures.file.name } : origin;
}

/** What is left of a set that broke off, when the disk does not have it. @param store null: it never had */
const unstoredOf = (error: SessionError, store: SetStore | null): StoredSet | null =>
  error.kind !== 'nothing-measured' && (error.storeError || !store) ? error.kept : null;

/**
 * Opens the pictures and the pose model, or the sticker worker, and runs the set.
 * @param person whose set it is
 * @param store null: this browser stores nothing; the set is measured all the same
 * @param onUnstored hears of a set that was measured but is not on the disk
 * @param onsets tells by its event `onset` that symptoms begin
 * @returns null when it was stopped before its pictures came
 */
export async function runPlan(
  plan: SetPlan,
  person: PersonId,
  hooks: SetHooks,
  store: SetStore | null,
  onUnstored: (set: StoredSet) => void,
  signal: AbortSignal,
  onsets: EventTarget,
): Promise<Result<StoredSet | null, Problem>> {
  const starting = observerOf(plan, hooks.onLoading);
  const pictures = await openPictures(plan.pictures);
  if (!pictures.ok) return pictures;
  const { source, opened } = pictures.value;
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
  const { observe, follow, begin } = client.value;
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
    onStoreTrouble: (error) => hooks.onStoreTrouble(error.kind),
  };
  const session = stickersOfPlan(plan)
    ? startSession(options, stickerMeasure)
    : startSession(options, { startSet, stepSet, markOnset, finishSet });
  signal.addEventListener('abort', session.stop, { once: true });
  onsets.addEventListener('onset', session.markOnset);
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
