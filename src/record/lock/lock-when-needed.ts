import { fail, type Result } from '../../result.ts';
import { storeErrorOf } from '../store-error.ts';
import type { LockError } from './lock-error.ts';
import type { LockNeeds, StoreLock } from './store-lock.ts';

type Done = Promise<Result<void, LockError>>;

/**
 * The lock of an open database, whose machinery is loaded when it is first asked for something: most stores have no lock.
 * @param locked whether the database has one
 */
export function lockWhenNeeded(needs: LockNeeds, locked: boolean): StoreLock {
  if (locked) needs.vault.set({ kind: 'locked' });
  let loaded: StoreLock | null = null;
  let loading: Promise<StoreLock> | null = null;
  const load = async (): Promise<StoreLock> => {
    const { storeLock } = await import('./store-lock.ts');
    loaded = storeLock(needs, locked);
    return loaded;
  };
  const through = async (call: (lock: StoreLock) => Done): Done => {
    loading ??= load();
    let lock: StoreLock;
    try {
      lock = await loading;
    } catch (cause) {
      // The page's server is gone; perhaps only for now.
      loading = null;
      return fail(storeErrorOf(cause));
    }
    return call(lock);
  };
  return {
    state: () => loaded?.state() ?? (locked ? 'locked' : 'off'),
    unlock: (passphrase, onProgress) => through((lock) => lock.unlock(passphrase, onProgress)),
    turnOn: (passphrase, onProgress) => through((lock) => lock.turnOn(passphrase, onProgress)),
    turnOff: (passphrase, onProgress) => through((lock) => lock.turnOff(passphrase, onProgress)),
    finish: (onProgress) => through((lock) => lock.finish(onProgress)),
    change: (old, next) => through((lock) => lock.change(old, next)),
    lockNow: () => loaded?.lockNow(),
    erase: () => through((lock) => lock.erase()),
  };
}
