import { listCameras } from '../../capture/camera.ts';
import { shareWindow } from '../../capture/shared-window.ts';
import { openLockableStore } from '../../record/open-store.ts';
import { askToKeepStorage } from '../../record/persistence.ts';
import { type PersonId, SELF } from '../../record/person.ts';
import type { PersonStore, Store } from '../../record/store.ts';
import type { StoreError } from '../../record/store-error.ts';
import type { StoredSet } from '../../record/stored-set.ts';
import { fail, ok, type Result } from '../../result.ts';
import { entryNow } from '../day/entry-now.ts';
import type { LockServices } from '../lock/lock-services.ts';
import type { AppServices, Problem, SetHooks, SetPlan } from '../services.ts';
import { diaryServices } from './diary.ts';
import { everythingIn } from './everything.ts';
import { hereServices } from './here.ts';
import { lockServices } from './lock.ts';
import { browserMessages } from './messages.ts';
import { limitsHere, missingFeatures } from './missing-features.ts';
import { peopleServices } from './people.ts';
import { problemOf } from './problem-of.ts';
import { storedSets, type UnstoredSets } from './stored-sets.ts';

/** What is the same for everybody: the store, once it is unlocked, its lock, and what must not be broken off by it. */
interface Shared {
  readonly opening: Promise<Result<Store, StoreError>>;
  readonly lock: LockServices;
  readonly busy: () => boolean;
  readonly going: { sets: number; readonly unstored: UnstoredSets[] };
}

/** The services of one person. @param of gives those of somebody else */
function servicesOf(person: PersonId, { opening, lock, busy, going }: Shared, of: AppServices['of']): AppServices {
  const missing = missingFeatures();
  const own: Promise<Result<PersonStore, StoreError>> = opening.then((store) => (store.ok ? ok(store.value.of(person)) : store));
  const unstored: UnstoredSets = new Map();
  going.unstored.push(unstored);
  const diary = diaryServices(own);

  const run = async (
    plan: SetPlan,
    hooks: SetHooks,
    signal: AbortSignal,
    wishes: EventTarget,
  ): Promise<Result<StoredSet | null, Problem>> => {
    const [{ runPlan }, store] = await Promise.all([import('./run-plan.ts'), own]);
    const hold = (set: StoredSet) => unstored.set(set.id, set);
    const disk = store.ok && plan.stored !== false ? store.value : null;
    const outcome = await runPlan(plan, person, hooks, disk, hold, signal, wishes);
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
    limits: limitsHere,
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
      const wishes = new EventTarget();
      going.sets += 1;
      const done = run(plan, hooks, abort.signal, wishes).finally(() => {
        going.sets -= 1;
      });
      return {
        done,
        stop: () => abort.abort(),
        markOnset: () => wishes.dispatchEvent(new Event('onset')),
        goOn: () => wishes.dispatchEvent(new Event('go-on')),
      };
    },
    lookAtStickers: async (pictures, hooks) => (await import('./sticker-look.ts')).lookAtStickers(pictures, hooks),
    still: {
      openFilm: async (file) => (await import('./still-pictures.ts')).openFilm(file),
      photo: async (file, plan, onLoading) => (await import('./still-pictures.ts')).lookAtPhoto(file, plan, onLoading),
    },
    ...storedSets(own, unstored, person),
    diary,
    everything: () => everythingIn(own),
    messages: browserMessages(),
    people: peopleServices(opening),
    records: async () => (await import('./records.ts')).recordServices(opening, person),
    server: async (base) => (await import('./server.ts')).serverServices(opening, person, base),
    lock,
    busy,
    here: hereServices(opening),
    of,
  };
}

/** The real program behind the screens. What only a running set needs is loaded with the first one. */
export function appServices(): AppServices {
  const lockable = openLockableStore();
  const opening = lockable.then((opened) => (opened.ok ? opened.value.store : opened));
  const going: Shared['going'] = { sets: 0, unstored: [] };
  const busy = () => going.sets > 0 || going.unstored.some(({ size }) => size > 0);
  const lock = lockServices(lockable, busy);
  // Kept for the page's life: a set that could not be stored is held by the services of its person.
  const known = new Map<PersonId, AppServices>();
  const of = (person: PersonId): AppServices => {
    const services = known.get(person) ?? servicesOf(person, { opening, lock, busy, going }, of);
    known.set(person, services);
    return services;
  };
  return of(SELF);
}
