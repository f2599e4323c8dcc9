import type { Result } from '../../result.ts';
import type { DiaryEntry } from '../diary-entry.ts';
import type { PersonId } from '../person.ts';
import type { StoreError } from '../store-error.ts';
import type { StoredSet } from '../stored-set.ts';

/** How one person's records stand to a server. */
export interface Connection {
  readonly person: PersonId;
  /** Address of the server's FHIR base, without a slash at its end. */
  readonly server: string;
  /** Who the person is there, e.g. `Patient/123`. */
  readonly patient: string;
  /** Everything that the server changed until this moment of its own clock has been taken in; null: nothing yet. ISO 8601. */
  readonly cursor: string | null;
  /** When records were last sent and last taken in, ISO 8601, UTC; null: never. */
  readonly sentAt: string | null;
  readonly takenAt: string | null;
}

/** What was chosen for one person's server; it holds for that server alone. */
export interface ServerChoice {
  readonly person: PersonId;
  /** As in `Connection`. */
  readonly server: string;
  /** One's own records are sent by themselves; somebody else's are taken in by themselves. */
  readonly automatic: boolean;
  /** A token by which new ones are got, of somebody who wants to stay signed in on this machine; null: nobody does. */
  readonly refreshToken: string | null;
}

/** Records that the server has not confirmed yet. */
export interface Waiting {
  /** Sets that are over, with all their changes by hand, of which at least one record waits; the oldest first. No more than were asked for. */
  readonly sets: readonly StoredSet[];
  /** Entries that wait. */
  readonly entries: readonly DiaryEntry[];
  /** Ids of all sets, changes by hand and entries that wait. */
  readonly ids: ReadonlySet<string>;
}

/** What is known of servers, by person. Every call is one transaction. */
export interface SyncStore {
  readonly connection: (person: PersonId) => Promise<Result<Connection | null, StoreError>>;
  /** Connects, or notes how far it went. Another server or patient than before begins anew: nothing counts as confirmed there. */
  readonly save: (connection: Connection) => Promise<Result<void, StoreError>>;
  /** What was chosen for this server; nothing of it unless it was. */
  readonly choice: (person: PersonId, server: string) => Promise<Result<ServerChoice, StoreError>>;
  readonly choose: (
    person: PersonId,
    server: string,
    part: Partial<Pick<ServerChoice, 'automatic' | 'refreshToken'>>,
  ) => Promise<Result<void, StoreError>>;
  /** All that hold for this server. */
  readonly choices: (server: string) => Promise<Result<readonly ServerChoice[], StoreError>>;
  /** Forgets the server and what was chosen for it. No record is touched. */
  readonly disconnect: (person: PersonId) => Promise<Result<void, StoreError>>;
  /** Notes that a server has these records. */
  readonly confirm: (person: PersonId, ids: readonly string[]) => Promise<Result<void, StoreError>>;
  /** @param most of the sets that are read whole */
  readonly waiting: (person: PersonId, most: number) => Promise<Result<Waiting, StoreError>>;
}
