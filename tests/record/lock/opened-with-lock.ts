import type { DatabaseVersion, StorePlatform } from '../../../src/record/database.ts';
import type { LockableStore, openLockableStore } from '../../../src/record/open-store.ts';
import type { Store } from '../../../src/record/store.ts';
import type { StoreError } from '../../../src/record/store-error.ts';
import type { Result } from '../../../src/result.ts';
import { wentWell } from '../went-well.ts';

/** An invented passphrase, as long as it must be. */
export const PASSPHRASE = 'ten grey herons';

/** The least that a lock may say: what is tested is not how slow guessing is. */
export const FEW_ROUNDS = 1000;

/** Opens the store of a browser with its lock on: turned on by the first page, unlocked by those that come later. */
export async function openedWithLock(
  open: typeof openLockableStore,
  platform: StorePlatform | null | undefined,
  versions: readonly DatabaseVersion[] | undefined,
): Promise<Result<Store, StoreError>> {
  const opened: Result<LockableStore, StoreError> = await open(platform, versions, FEW_ROUNDS);
  if (!opened.ok) return opened;
  const { lock, store } = opened.value;
  const knowsLocks = (versions ?? [{ version: 7 }]).some(({ version }) => version >= 7);
  if (!knowsLocks) return store;
  wentWell(await (lock.state() === 'off' ? lock.turnOn(PASSPHRASE) : lock.unlock(PASSPHRASE)));
  return store;
}
