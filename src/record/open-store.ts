import { fail, ok, type Result } from '../result.ts';
import { type Database, type DatabaseVersion, database, type StorePlatform, VERSIONS } from './database.ts';
import { storeOn } from './database-store.ts';
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
  return { indexedDB, IDBKeyRange, locks: navigator.locks };
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

/**
 * Opens the store and marks the sets whose page closed while they ran as interrupted.
 * A page that is open while a newer version of the program wants to change the database lets go of it, unless a set runs here.
 */
export async function openSetStore(
  platform: StorePlatform | null = platformHere(),
  versions: readonly DatabaseVersion[] = VERSIONS,
): Promise<Result<Store, StoreError>> {
  if (!platform) return fail({ kind: 'store-unavailable', detail: 'no IndexedDB or no Web Locks' });
  const db = database(platform, versions);
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
  const error = await opened(db, Math.max(...versions.map(({ version }) => version)));
  if (error) return fail(error);
  try {
    await markAbandoned(db, locks, CLOSING_MS);
  } catch (cause) {
    // A full disk keeps the mark from being written, but what is stored can still be read.
    const failed = storeErrorOf(cause);
    if (failed.kind !== 'store-full') {
      db.close();
      return fail(failed);
    }
  }
  return ok(storeOn(db, locks, () => outdated));
}
