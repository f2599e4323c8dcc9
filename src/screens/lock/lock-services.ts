import type { StoreApi } from 'zustand/vanilla';
import type { LockError } from '../../record/lock/lock-error.ts';
import type { Result } from '../../result.ts';

/** `opening`: not known yet. `part`: unlocked, but turning it on or off broke off. `erased`: everything is deleted, and the page only says so. */
export type ShownLock = 'opening' | 'off' | 'locked' | 'open' | 'part' | 'erased';

type Done = Promise<Result<null, Pick<LockError, 'kind'>>>;
/** @param share that is done of all rows */
type OnProgress = (share: number) => void;

/** The passphrase lock as the screens ask for it. */
export interface LockServices {
  readonly state: StoreApi<ShownLock>;
  readonly unlock: (passphrase: string, onProgress: OnProgress) => Done;
  readonly turnOn: (passphrase: string, onProgress: OnProgress) => Done;
  readonly turnOff: (passphrase: string, onProgress: OnProgress) => Done;
  /** Goes on with what broke off. */
  readonly finish: (onProgress: OnProgress) => Done;
  readonly change: (old: string, next: string) => Done;
  /** Locks here and in every other tab, and loads the page anew, so that nothing of the records is left in it. */
  readonly lockNow: () => void;
  /** Deletes all that is kept on this machine: database, choices, the kept program and its models. */
  readonly erase: () => Done;
  /** Keeps the page from locking by itself, as while something is counted without a touch. @returns the end of it */
  readonly keepOpen: () => () => void;
}
