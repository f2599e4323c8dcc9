import type { Result } from '../result.ts';
import type { DiaryStore } from './diary-store.ts';
import type { RecordStore } from './file/record-store.ts';
import type { PeopleStore } from './people-store.ts';
import type { PersonId } from './person.ts';
import type { SetStore } from './set-store.ts';
import type { StoreError } from './store-error.ts';
import type { StoredRows } from './stored-rows.ts';
import type { SyncStore } from './sync/sync-store.ts';

/** What is kept of one person: their measured sets and their diary. */
export interface PersonStore extends SetStore {
  readonly diary: DiaryStore;
}

/** All that is kept on this machine, in one database; by itself what is kept of `SELF`. */
export interface Store extends PersonStore {
  readonly of: (person: PersonId) => PersonStore;
  readonly people: PeopleStore;
  /** Loaded when it is first asked for. */
  readonly records: () => Promise<RecordStore>;
  /** How much is stored, of everybody. */
  readonly rows: () => Promise<Result<StoredRows, StoreError>>;
  /** Loaded when it is first asked for. */
  readonly sync: () => Promise<SyncStore>;
  readonly close: () => void;
}
