import type { MeasuredRep, SetResult } from '../measure/set-result.ts';
import type { Result } from '../result.ts';
import type { RemovedAt } from './remove-set.ts';
import type { RepEdit } from './rep-edit.ts';
import type { SetError, StoreError } from './store-error.ts';
import type { SetHeader, StoredSet } from './stored-set.ts';

/** How a set ended. An interrupted one may still have the result of what was measured until then. */
export interface SetEnding {
  readonly state: 'finished' | 'interrupted';
  readonly result: SetResult | null;
}

/** Where the next page of a list begins: after this set. */
export interface ListCursor {
  readonly startedAt: string;
  readonly id: string;
}

/** Some sets, the newest first. */
export interface SetPage {
  readonly sets: readonly StoredSet[];
  /** Sets of this page that can't be read. They stay as they are. */
  readonly damaged: readonly { readonly id: string; readonly what: string }[];
  /** Null on the last page. */
  readonly next: ListCursor | null;
}

/** Sets on this machine: `list` gives one person's, all else goes by the set's own header or id. Every call is one transaction: it happened wholly or not at all. */
export interface SetStore {
  /** Writes a set as running and marks it as this page's own until it ends or the page closes. */
  readonly begin: (header: SetHeader) => Promise<Result<void, StoreError>>;
  /**
   * Adds repetitions as they end, and the beginning too if that failed before. They are on the disk when it resolves;
   * writing the same one again changes nothing.
   */
  readonly append: (header: SetHeader, reps: readonly MeasuredRep[]) => Promise<Result<void, StoreError>>;
  /** Writes the end, and the beginning too if that failed before. The set is no longer this page's own, also when this fails. */
  readonly end: (header: SetHeader, ending: SetEnding) => Promise<Result<void, StoreError>>;
  /** @param after from the page before; without it the newest */
  readonly list: (options: { readonly limit: number; readonly after?: ListCursor }) => Promise<Result<SetPage, StoreError>>;
  readonly read: (id: string) => Promise<Result<StoredSet, SetError>>;
  /** Adds an edit to a set that is not running; the measured repetitions stay. */
  readonly edit: (edit: RepEdit) => Promise<Result<void, SetError>>;
  /** Removes a set with all that belongs to it. An entry of the diary stays that says so, so that no copy of it comes back. */
  readonly remove: (id: string, when: RemovedAt) => Promise<Result<void, SetError>>;
}
