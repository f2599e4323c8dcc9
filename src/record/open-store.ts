import { fail, ok, type Result } from '../result.ts';
import { type Database, type DatabaseVersion, database, newestOf, type StorePlatform, VERSIONS } from './database.ts';
import { storeOn } from './database-store.ts';
import { freshLog } from './fresh-log.ts';
import { LOCK_ID, LOCK_TABLE } from './lock/lock-place.ts';
import { lockWhenNeeded } from './lock/lock-when-needed.ts';
import { pageLocks } from './lock/page-locks.ts';
import { ROUNDS } from './lock/rounds.ts';
import type { StoreLock } from './lock/store-lock.ts';
import { createVault } from './lock/vault.ts';
import { setLocks } from './set-locks.ts';
import type { Store } from './store.ts';
import { type StoreError, storeErrorOf } from './store-error.ts';
import { markAbandoned } from './write-sets.ts';

/** What Dexie multiplies its version numbers by before it hands them to the browser. */
const DEXIE_VERSION_UNIT = 10;

/** A page that is reloaded opens the store before the browser has taken the old one's locks away. Chosen: after a reload they were seen to
 *  be free within 20 ms. */
const CLOSING_MS = 500;

function platformHere(): StorePlatform | null {
  if (typeof indexedDB === 'undefined' || typeof IDBKeyRange === 'undefined') return null;
  // Web Locks stand only where pages are secure, as does the decoding of pictures: without them there is no set to store either.
  if (typeof navigator === 'undefined' || !('locks' in navigator)) return null;
  return { indexedDB, IDBKeyRange, locks: navigator.locks, crypto };
}

/** Opens the database or says why not. Another tab that can't let go of an older shape is not waited for. */
async function opened(db: Database, newest: number): Promise<StoreError | null> {
  const blocked = new Promise<StoreError>((resolve) => {
    db.on('blocked', () => resolve({ kind: 'store-blocked' }));
  });
  const opening = db.open().then(
    (): StoreError | null => (db.backendDB().version > newest * DEXIE_VERSION_UNIT ? { kind: 'store-newer' } : null),
    (cause: unknown): StoreError => {
      const error = storeErrorOf(cause);
      // Private windows and switched-off storage show in many ways, all of them when opening.
      return error.kind === 'store-failed' ? { kind: 'store-unavailable', detail: error.detail } : error;
    },
  );
  const error = await Promise.race([opening, blocked]);
  if (error) db.close();
  return error;
}

/** The store behind its lock. */
export interface LockableStore {
  readonly lock: StoreLock;
  /** Comes once the store is unlocked, at once where there is no lock. */
  readonly store: Promise<Result<Store, StoreError>>;
}

/**
 * Opens the database. Once it is unlocked, sets whose page closed while they ran are marked as interrupted.
 * A page that is open while a newer version of the program wants to change the database lets go of it, unless a set runs here.
 */
export async function openLockableStore(
  platform: StorePlatform | null = platformHere(),
  versions: readonly DatabaseVersion[] = VERSIONS,
  rounds = ROUNDS,
): Promise<Result<LockableStore, StoreError>> {
  if (!platform) return fail({ kind: 'store-unavailable', detail: 'no IndexedDB or no Web Locks' });
  const pages = pageLocks(platform.locks);
  // Another page turns the lock on or off.
  if (!(await pages.enter(CLOSING_MS))) return fail({ kind: 'store-blocked' });
  const vault = createVault();
  const db = database(platform, versions, vault);
  let outdated = false;
  const letGo = () => {
    if (outdated && locks.held() === 0) db.close();
  };
  const locks = setLocks(platform.locks, letGo);
  db.on('versionchange', () => {
    outdated = true;
    letGo();
    // Stops Dexie's own answer, which would close under a running set and open again in the newer shape.
    return false;
  });
  const given = (error: StoreError): Result<never, StoreError> => {
    db.close();
    pages.leave();
    return fail(error);
  };
  await freshLog(platform.indexedDB);
  const newest = newestOf(versions);
  const error = await opened(db, newest);
  if (error) return given(error);

  let give: (store: Result<Store, StoreError>) => void = () => undefined;
  const store = new Promise<Result<Store, StoreError>>((resolve) => {
    give = resolve;
  });
  const onUnlocked = async (): Promise<StoreError | null> => {
    const failed = await markAbandoned(db, locks, CLOSING_MS).then(() => null, storeErrorOf);
    // A full disk keeps the mark from being written, but what is stored can still be read.
    if (failed && failed.kind !== 'store-full') return failed;
    give(ok(storeOn(db, locks, () => outdated, pages.leave)));
    return null;
  };
  try {
    // Shapes of before the lock have no place for one.
    const locked = db.tables.some(({ name }) => name === LOCK_TABLE) && (await db.lock.get(LOCK_ID)) !== undefined;
    const running = () => locks.held() > 0;
    const lock = lockWhenNeeded({ db, vault, pages, crypto: platform.crypto, rounds, newest, running, onUnlocked }, locked);
    const failed = locked ? null : await onUnlocked();
    return failed ? given(failed) : ok({ lock, store });
  } catch (cause) {
    return given(storeErrorOf(cause));
  }
}

/** The store where it has no lock; `store-locked` where it has one. */
export async function openSetStore(
  platform?: StorePlatform | null,
  versions?: readonly DatabaseVersion[],
): Promise<Result<Store, StoreError>> {
  const opened = await openLockableStore(platform, versions);
  if (!opened.ok) return opened;
  const { lock, store } = opened.value;
  return lock.state() === 'locked' ? fail({ kind: 'store-locked' }) : store;
}
