import type { RowKey } from './sealed-row.ts';

/** How rows go in and out. */
export type Access =
  /** As they are. */
  | { readonly kind: 'plain' }
  /** Sealed ones are opened. Those written are sealed, or not any more while the lock is turned off. */
  | ({ readonly kind: 'keyed'; readonly seals: boolean } & RowKey)
  /** Not at all. */
  | { readonly kind: 'locked' };

/** Holds the key of the rows as long as the store is unlocked, in this page's memory alone. */
export interface Vault {
  readonly access: () => Access;
  readonly set: (access: Access) => void;
}

export function createVault(): Vault {
  let now: Access = { kind: 'plain' };
  return {
    access: () => now,
    set(access) {
      now = access;
    },
  };
}

/** Somebody asked for rows while they are locked. */
export class StoreLockedError extends Error {
  override readonly name = 'StoreLockedError';
}
