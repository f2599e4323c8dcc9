import { listCameras } from '../../capture/camera.ts';
import { shareWindow } from '../../capture/shared-window.ts';
import { openSetStore } from '../../record/open-store.ts';
import { askToKeepStorage } from '../../record/persistence.ts';
import type { StoredSet } from '../../record/stored-set.ts';
import { fail, type Result } from '../../result.ts';
import { entryNow } from '../day/entry-now.ts';
import type { AppServices, Problem, SetHooks, SetPlan } from '../services.ts';
import { diaryServices } from './diary.ts';
import { everythingIn } from './everything.ts';
import { browserMessages } from './messages.ts';
import { missingFeatures } from './missing-features.ts';
import { problemOf } from './problem-of.ts';
import { storedSets, type UnstoredSets } from './stored-sets.ts';

/** The real program behind the screens. What only a running set needs is loaded with the first one. */
export function appServices(): AppServices {
  const missing = missingFeatures();
  const opening = openSetStore();
  const unstored: UnstoredSets = new Map();
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
      return {
        done: run(plan, hooks, abort.signal, onsets),
        stop: () => abort.abort(),
        markOnset: () => onsets.dispatchEvent(new Event('onset')),
      };
    },
    still: {
      openFilm: async (file) => (await import('./still-pictures.ts')).openFilm(file),
      photo: async (file, plan, onLoading) => (await import('./still-pictures.ts')).lookAtPhoto(file, plan, onLoading),
    },
    ...storedSets(opening, unstored),
    diary,
    everything: () => everythingIn(opening),
    messages: browserMessages(),
  };
}
