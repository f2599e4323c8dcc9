import { shareWindow } from '../../capture/shared-window.ts';
import { askToKeepStorage } from '../../record/persistence.ts';
import { type PersonId, SELF } from '../../record/person.ts';
import type { PersonStore, Store } from '../../record/store.ts';
import type { StoreError } from '../../record/store-error.ts';
import type { StoredSet } from '../../record/stored-set.ts';
import { fail, ok, type Result } from '../../result.ts';
import { entryNow } from '../day/entry-now.ts';
import type { LockServices } from '../lock/lock-services.ts';
import type { ServerServices } from '../server/server-services.ts';
import type { AppServices, Problem, SetHooks, SetPlan } from '../services.ts';
import { diaryServices } from './diary.ts';
import { everythingIn } from './everything.ts';
import { hereServices } from './here.ts';
import { lockServices } from './lock.ts';
import { browserMessages } from './messages.ts';
import { limitsHere, missingFeatures } from './missing-features.ts';
import { openHere, type StoreHere } from './open-here.ts';
import { peopleServices } from './people.ts';
import { problemOf } from './problem-of.ts';
import { storedSets, type Unstored, type UnstoredSets } from './stored-sets.ts';

/** What is the same for everybody: the store, once it is unlocked, its lock, and what must not be broken off by it. */
interface Shared {
  readonly here: Promise<StoreHere>;
  readonly opening: Promise<Result<Store, StoreError>>;
  readonly lock: LockServices;
  readonly busy: () => boolean;
  /** Told of what was stored, with whose it is. */
  readonly stored: EventTarget;
  readonly going: { sets: number; readonly unstored: UnstoredSets[] };
}

/** The services of one person. @param of gives those of somebody else */
function servicesOf(person: PersonId, { here, opening, lock, busy, stored, going }: Shared, of: AppServices['of']): AppServices {
  const missing = missingFeatures();
  const own: Promise<Result<PersonStore, StoreError>> = opening.then((store) => (store.ok ? ok(store.value.of(person)) : store));
  const unstored: UnstoredSets = new Map<string, Unstored>();
  going.unstored.push(unstored);
  let servers: ServerServices | null = null;
  const tell = <T extends { readonly ok: boolean }>(done: T): T => {
    if (done.ok) stored.dispatchEvent(new Event(person));
    return done;
  };
  const told = diaryServices(own);
  const diary: AppServices['diary'] = { ...told, add: async (entries) => tell(await told.add(entries)) };
  const sets = storedSets(own, unstored, person);

  const run = async (
    plan: SetPlan,
    hooks: SetHooks,
    signal: AbortSignal,
    wishes: EventTarget,
  ): Promise<Result<StoredSet | null, Problem>> => {
    const [{ runPlan }, store] = await Promise.all([import('./run-plan.ts'), own]);
    const { line } = plan;
    const linkOf = (setId: string) => (line ? ([{ ...entryNow(), kind: 'set-link', setId, ...line }] as const) : []);
    const hold = (set: StoredSet) => unstored.set(set.id, { set, link: linkOf(set.id) });
    const disk = store.ok && plan.stored !== false ? store.value : null;
    // Where nothing is kept at all, every screen says so.
    if (!store.ok && plan.stored !== false) hooks.onStoreTrouble(store.error.kind);
    const outcome = await runPlan(plan, person, hooks, disk, hold, signal, wishes);
    if (outcome.ok && outcome.value && disk) {
      void askToKeepStorage();
      // Without the link the set still counts for its exercise and leg: that it could not be written is no reason to lose the result.
      await diary.add(linkOf(outcome.value.id));
    }
    return outcome;
  };

  return {
    missing: () => missing,
    limits: limitsHere,
    cameras: async () => {
      const found = await (await import('../../capture/camera.ts')).listCameras();
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
        tell({ ok: true });
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
    ...sets,
    change: async (id, change) => tell(await sets.change(id, change)),
    visitOnly: async () => (await here).inMemory,
    diary,
    everything: () => everythingIn(own),
    messages: browserMessages(),
    people: peopleServices(opening),
    records: async () => (await import('./records.ts')).recordServices(opening, person),
    server: async (known) => {
      const { serverServices } = await import('./server.ts');
      servers ??= serverServices(person, known, { opening, lock: lock.state, busy });
      return servers;
    },
    onStored(hear) {
      stored.addEventListener(person, hear);
      return () => stored.removeEventListener(person, hear);
    },
    lock,
    busy,
    here: hereServices(opening),
    of,
  };
}

/** The real program behind the screens. What only a running set needs is loaded with the first one. */
export function appServices(): AppServices {
  const here = openHere();
  const lockable = here.then(({ opened }) => opened);
  const opening = lockable.then((opened) => (opened.ok ? opened.value.store : opened));
  const stored = new EventTarget();
  const going: Shared['going'] = { sets: 0, unstored: [] };
  const busy = () => going.sets > 0 || going.unstored.some(({ size }) => size > 0);
  const lock = lockServices(lockable, busy);
  // Kept for the page's life: a set that could not be stored is held by the services of its person.
  const known = new Map<PersonId, AppServices>();
  const of = (person: PersonId): AppServices => {
    const services = known.get(person) ?? servicesOf(person, { here, opening, lock, busy, stored, going }, of);
    known.set(person, services);
    return services;
  };
  return of(SELF);
}
