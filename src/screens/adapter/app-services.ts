import { listCameras } from '../../capture/camera.ts';
import { shareWindow } from '../../capture/shared-window.ts';
import { openSetStore } from '../../record/open-store.ts';
import { askToKeepStorage } from '../../record/persistence.ts';
import { type PersonId, SELF } from '../../record/person.ts';
import type { PersonStore, Store } from '../../record/store.ts';
import type { StoreError } from '../../record/store-error.ts';
import type { StoredSet } from '../../record/stored-set.ts';
import { fail, ok, type Result } from '../../result.ts';
import { entryNow } from '../day/entry-now.ts';
import type { AppServices, Problem, SetHooks, SetPlan } from '../services.ts';
import { diaryServices } from './diary.ts';
import { everythingIn } from './everything.ts';
import { browserMessages } from './messages.ts';
import { missingFeatures } from './missing-features.ts';
import { peopleServices } from './people.ts';
import { problemOf } from './problem-of.ts';
import { storedSets, type UnstoredSets } from './stored-sets.ts';

/** The services of one person on an opening store. @param of gives those of somebody else */
function servicesOf(person: PersonId, opening: Promise<Result<Store, StoreError>>, of: AppServices['of']): AppServices {
  const missing = missingFeatures();
  const own: Promise<Result<PersonStore, StoreError>> = opening.then((store) => (store.ok ? ok(store.value.of(person)) : store));
  const unstored: UnstoredSets = new Map();
  const diary = diaryServices(own);

  const run = async (
    plan: SetPlan,
    hooks: SetHooks,
    signal: AbortSignal,
    onsets: EventTarget,
  ): Promise<Result<StoredSet | null, Problem>> => {
    const [{ runPlan }, store] = await Promise.all([import('./run-plan.ts'), own]);
    const hold = (set: StoredSet) => unstored.set(set.id, set);
    const disk = store.ok && plan.stored !== false ? store.value : null;
    const outcome = await runPlan(plan, person, hooks, disk, hold, signal, onsets);
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
    ...storedSets(own, unstored),
    diary,
    everything: () => everythingIn(own),
    messages: browserMessages(),
    people: peopleServices(opening),
    of,
  };
}

/** The real program behind the screens. What only a running set needs is loaded with the first one. */
export function appServices(): AppServices {
  const opening = openSetStore();
  // Kept for the page's life: a set that could not be stored is held by the services of its person.
  const known = new Map<PersonId, AppServices>();
  const of = (person: PersonId): AppServices => {
    const services = known.get(person) ?? servicesOf(person, opening, of);
    known.set(person, services);
    return services;
  };
  return of(SELF);
}
