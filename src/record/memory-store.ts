import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { fail, ok, type Result } from '../result.ts';
import { memoryLocks } from './memory-locks.ts';
import { type LockableStore, openLockableStore } from './open-store.ts';
import type { StoreError } from './store-error.ts';

/**
 * The same store in the page's memory, for a browser that keeps nothing: all works, and all is gone with the page. It has no passphrase lock, which would
 * protect nothing here.
 */
export async function openMemoryStore(): Promise<Result<LockableStore, StoreError>> {
  const opened = await openLockableStore({ indexedDB: new IDBFactory(), IDBKeyRange, locks: memoryLocks(), crypto });
  if (!opened.ok) return opened;
  const noLock = async () => fail({ kind: 'store-unavailable', detail: 'the store is in memory' } as const);
  return ok({ ...opened.value, lock: { ...opened.value.lock, turnOn: noLock } });
}
