import type { Result } from '../../result.ts';
import type { Person, PersonId } from '../person.ts';
import type { StoreError } from '../store-error.ts';
import type { RecordFile } from './read-record.ts';

/** For whom a record is taken in: somebody who is here, or somebody new. */
export type Into = { readonly kind: 'here'; readonly person: PersonId } | { readonly kind: 'new'; readonly person: Person };

/** What a record brings, or would bring. */
export interface Brought {
  /** `grown`: here before, but with less known of it. */
  readonly sets: { readonly fresh: number; readonly grown: number; readonly same: number };
  readonly entries: { readonly fresh: number; readonly same: number };
  /** Sets, changes by hand and entries whose id stands here with something else. What is here stays. */
  readonly conflicts: number;
  /** Sets that were taken back. `here`: they were here, and are gone now; `coming`: they were in what came, and are not taken in. */
  readonly removed: { readonly here: number; readonly coming: number };
}

export type TakeInError =
  | StoreError
  | { readonly kind: 'person-missing'; readonly id: PersonId }
  /** Some of it is here already, with somebody else. */
  | { readonly kind: 'record-elsewhere'; readonly person: PersonId; readonly count: number };

/** Records on their way from one machine to another. Every call is one transaction: it happened wholly or not at all. */
export interface RecordStore {
  /** The ids under which somebody's record goes out, at least one; made when there is none yet. */
  readonly idsOf: (person: PersonId) => Promise<Result<readonly string[], StoreError>>;
  /** How many sets somebody has, those that can't be read among them. */
  readonly setCount: (person: PersonId) => Promise<Result<number, StoreError>>;
  /** Whose a record with these ids is here; null: nobody's yet. */
  readonly ownerOf: (ids: readonly string[]) => Promise<Result<PersonId | null, StoreError>>;
  /** The ids of all that somebody took back here. */
  readonly removedOf: (person: PersonId) => Promise<Result<ReadonlySet<string>, StoreError>>;
  /** What taking it in would do. Nothing is written. */
  readonly looked: (into: PersonId | null, record: RecordFile) => Promise<Result<Brought, TakeInError>>;
  /** Joins it with what is here: a union by the ids of sets, changes and entries. @param onProgress share of the sets that is written, none of them for good before the end */
  readonly taken: (into: Into, record: RecordFile, onProgress?: (share: number) => void) => Promise<Result<Brought, TakeInError>>;
}
