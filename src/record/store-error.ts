/** Why something could not be stored or read. `detail` is the browser's own wording, for a report of a fault, not for people. */
export type StoreError =
  /** The disk or this site's share of it is full. */
  | { readonly kind: 'store-full' }
  /** Another tab holds the database in an older shape and can't let go: a set is running there. */
  | { readonly kind: 'store-blocked' }
  /** No database in this browser, as in some private windows, or none that tells running sets from abandoned ones. */
  | { readonly kind: 'store-unavailable'; readonly detail: string }
  /** A newer version of the program wrote the database; this page is out of date. */
  | { readonly kind: 'store-newer' }
  /** The passphrase lock is on, and nobody has unlocked it here. */
  | { readonly kind: 'store-locked' }
  /** Nothing came back in time; it may still be written later. */
  | { readonly kind: 'store-stalled' }
  | { readonly kind: 'store-failed'; readonly detail: string }
  /** What should be stored has not the shape that is stored; `what` names the place. */
  | { readonly kind: 'store-refused'; readonly what: string };

/** Why one set could not be read or changed. */
export type SetError =
  | StoreError
  | { readonly kind: 'set-missing'; readonly id: string }
  /** Stored, but not in a shape that can be read; `what` names the first thing wrong. */
  | { readonly kind: 'set-damaged'; readonly id: string; readonly what: string }
  /** It is running, here or in another tab. */
  | { readonly kind: 'set-running'; readonly id: string }
  /** An edit names a repetition that the set does not have. */
  | { readonly kind: 'rep-missing'; readonly id: string };

const BY_NAME: Readonly<Record<string, StoreError>> = {
  QuotaExceededError: { kind: 'store-full' },
  VersionError: { kind: 'store-newer' },
  StoreLockedError: { kind: 'store-locked' },
};
/** Errors wrap one another no deeper than this. Chosen: a failed write shows two. */
const DEEPEST = 5;

const innerOf = (cause: Error): Error | null => ('inner' in cause && cause.inner instanceof Error ? cause.inner : null);

/** What a failed database call means: a full disk, for one, comes wrapped in an aborted transaction. */
export function storeErrorOf(cause: unknown): StoreError {
  let error = cause instanceof Error ? cause : null;
  const detail = error ? `${error.name}: ${error.message}` : String(cause);
  for (let depth = 0; error && depth < DEEPEST; depth += 1) {
    const known = BY_NAME[error.name];
    if (known) return known;
    error = innerOf(error);
  }
  return { kind: 'store-failed', detail };
}
