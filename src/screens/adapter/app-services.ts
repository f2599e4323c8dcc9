import { listCameras } from '../../capture/camera.ts';
import { shareWindow } from '../../capture/shared-window.ts';
import { openLockableStore } from '../../record/open-store.ts';
import { askToKeepStorage } from '../../record/persistence.ts';
import type { StoredSet } from '../../record/stored-set.ts';
import { fail, type Result } from '../../result.ts';
import { entryNow } from '../day/entry-now.ts';
import type { AppServices, Problem, SetHooks, SetPlan } from '../services.ts';
import { diaryServices } from './diary.ts';
import { everythingIn } from './everything.ts';
import { lockServices } from './lock.ts';
import { browserMessages } from './messages.ts';
import { missingFeatures } from './missing-features.ts';
import { problemOf } from './problem-of.ts';
import { storedSets, type UnstoredSets } from './stored-sets.ts';

/** The real program behind the screens. What only a running set needs is loaded with the first one. */
export function appServices(): AppServices {
  const missing = missingFeatures();
  const lockable = openLockableStore();
  const opening = lockable.then((opened) => (opened.ok ? opened.value.store : opened));
  const unstored: UnstoredSets = new Map();
  let running = 0;
  const diary = diaryServices(opening);

  const run = async (
    plan: SetPlan,
    hooks: SetHooks,
    signal: AbortSignal,
    onsets: EventTarget,
  ): Promise<Result<StoredSet | null, Problem>> => {
    const [{ runPlan }, store] = await Promise.all([import('./run-plan.ts'), opening]);
    const hold = (set: StoredSet) => unstored.set(set.id, set);
    const disk = store.ok && plan.stored !== false ? store.value : null;
    const outcome = await runPlan(plan, hooks, disk, hold, signal, onsets);
    if (outcome.ok && outcome.value && disk) {
      void askToKeepStorage();
      const { line } = plan;
      // Without the link the set still counts for its exercise and leg: that it could not be written is no reason to lose the result.
      if (line) await diary.add([{ ...entryNow(), kind: 'set-link', setId: outcome.value.id, ...line }]);
    }
    return outcome;
  };

  return {
    missing: () => missing,
    cameras: async () => {
      const found = await listCameras();
      return found.ok ? found.value : [];
    },
    shareWindow: async () => {
      const shared = await shareWindow();
      return shared.ok ? shared : fail(problemOf(shared.error));
    },
    runSet(plan, hooks) {
      const abort = new AbortController();
      const onsets = new EventTarget();
      running += 1;
      const done = run(plan, hooks, abort.signal, onsets).finally(() => {
        running -= 1;
      });
      return {
        done,
        stop: () => abort.abort(),
        markOnset: () => onsets.dispatchEvent(new Event('onset')),
      };
    },
    ...storedSets(opening, unstored),
    diary,
    everything: () => everythingIn(opening),
    messages: browserMessages(),
    lock: lockServices(lockable, () => running > 0 || unstored.size > 0),
  };
}
