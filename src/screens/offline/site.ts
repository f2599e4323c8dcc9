import { createStore, type StoreApi } from 'zustand/vanilla';
import type { PoseModel } from '../../pose/model.ts';

/**
 * Whether all works without a network: `starting`: not known yet. `without`: this browser can't. `waits`: it is asked to save data, so the model is fetched
 * when the person says so. `fetching`: under way. `failed`: broken off, tried again when the network is back. `no-room`: it came, works for this visit, and could not be
 * kept. `ready`: all is here.
 */
export type Readiness = 'starting' | 'without' | 'waits' | 'fetching' | 'failed' | 'no-room' | 'ready';

/** What came of an attempt to keep something. */
export type Kept = 'kept' | 'failed' | 'no-room';

export interface SiteState {
  readonly readiness: Readiness;
  /** Share of the model that is here, 0 to 1. */
  readonly share: number;
  /** A new version is here and waits to be taken. */
  readonly newVersion: boolean;
  /** It could not be taken: another tab is in the middle of something. */
  readonly otherTab: boolean;
}

/** The service worker as this page deals with it. */
export interface SiteWorker {
  /** Registers it, and comes once the site is kept or could not be. @throws what the browser throws where it can't */
  readonly start: (onWaiting: () => void, onTaken: () => void) => Promise<Kept>;
  /** Has the waiting version take over; `onTaken` is told in every tab. */
  readonly take: () => void;
}

/** The model that is chosen. */
export interface ModelKeeper {
  readonly isKept: (model: PoseModel) => Promise<boolean>;
  readonly keep: (model: PoseModel, onShare: (share: number) => void) => Promise<Kept>;
}

export interface SiteNeeds {
  /** Null: this browser has none. */
  readonly worker: SiteWorker | null;
  readonly models: ModelKeeper;
  /** Null: this browser has no Web Locks. */
  readonly locks: Pick<LockManager, 'request'> | null;
  /** The browser is asked to save data. */
  readonly saveData: boolean;
  readonly reload: () => void;
}

/** The site as it is kept in this browser, and its next version. */
export interface Site {
  readonly state: StoreApi<SiteState>;
  /** Registers the service worker. To be called once; a second call does nothing. */
  readonly start: () => Promise<void>;
  /** Sees to it that this model is here, too, once the site is. @param asked the person said so */
  readonly keep: (model: PoseModel, asked?: boolean) => Promise<void>;
  /** Says whether this page may be loaded anew now: nothing runs, nothing is typed and not kept. A version that another tab took comes in then. */
  readonly calm: (calm: boolean) => void;
  /** Takes the new version, unless another tab is in the middle of something. */
  readonly take: () => Promise<void>;
}

/** Held, in shares, by every tab that is in the middle of something; as a whole by the one that takes a new version, so that nothing begins meanwhile. */
const LOCK = 'evenside-in-the-middle';
/** So long the lock is kept for the new version to take over and every tab to be loaded anew, ms. Chosen. */
const TAKING_MS = 10_000;

export function createSite({ worker, models, locks, saveData, reload }: SiteNeeds): Site {
  const state = createStore<SiteState>(() => ({
    readiness: worker ? 'starting' : 'without',
    share: 0,
    newVersion: false,
    otherTab: false,
  }));
  let calmNow = true;
  let taken = false;
  let started: Promise<boolean> | null = null;
  let letGo: () => void = () => undefined;
  let wanted: PoseModel | null = null;

  const onTaken = () => {
    taken = true;
    if (calmNow) reload();
  };

  const keep = async (model: PoseModel, asked = false): Promise<void> => {
    wanted = model;
    if (!(await started) || wanted !== model) return;
    if (await models.isKept(model)) return state.setState({ readiness: 'ready' });
    if (saveData && !asked) return state.setState({ readiness: 'waits' });
    state.setState({ readiness: 'fetching', share: 0 });
    const kept = await models.keep(model, (share) => state.setState({ share }));
    // Another one was chosen meanwhile.
    if (wanted === model) state.setState({ readiness: kept === 'kept' ? 'ready' : kept });
  };

  return {
    state,
    keep,
    async start() {
      if (!worker || started) return;
      const waiting = () => state.setState({ newVersion: true });
      started = worker.start(waiting, onTaken).then(
        (kept) => {
          if (kept !== 'kept') state.setState({ readiness: kept });
          return kept === 'kept';
        },
        () => {
          state.setState({ readiness: 'without' });
          return false;
        },
      );
      await started;
    },
    calm(calm) {
      if (calm === calmNow) return;
      calmNow = calm;
      letGo();
      letGo = () => undefined;
      if (calm && taken) return reload();
      if (calm || !locks) return;
      const held = new Promise<void>((end) => {
        letGo = end;
      });
      locks.request(LOCK, { mode: 'shared' }, () => held).catch(() => undefined);
    },
    async take() {
      if (!worker) return;
      state.setState({ otherTab: false });
      if (!locks) return worker.take();
      await locks.request(LOCK, { mode: 'exclusive', ifAvailable: true }, async (lock) => {
        if (!lock) return state.setState({ otherTab: true });
        worker.take();
        await new Promise((resolve) => setTimeout(resolve, TAKING_MS));
      });
    },
  };
}
