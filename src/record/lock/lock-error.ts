import type { StoreError } from '../store-error.ts';

/** Why the lock did not do what was asked. Nothing has changed then, unless it says so. */
export type LockError =
  | StoreError
  /** The passphrase is another one. */
  | { readonly kind: 'lock-wrong' }
  /** The new passphrase has fewer characters than it must. */
  | { readonly kind: 'lock-short' }
  /** Other pages of the program are open. */
  | { readonly kind: 'lock-other-tabs' }
  | { readonly kind: 'lock-set-running' }
  /** Another page has turned the lock on or off or changed the passphrase meanwhile. */
  | { readonly kind: 'lock-changed' }
  /** What the key is opened with can't be read; `what` names the first thing wrong. */
  | { readonly kind: 'lock-damaged'; readonly what: string };
