import Dexie, { type Table } from 'dexie';
import type { MeasuredRep } from '../measure/set-result.ts';
import type { DiaryEntry } from './diary-entry.ts';
import type { FactsRow } from './facts-row.ts';
import { withFootRow, withOnsetRow } from './foot-and-onset.ts';
import { withGlideRow } from './glide-row.ts';
import type { LockRow } from './lock/lock-row.ts';
import { isSealed } from './lock/sealed-row.ts';
import { sealing } from './lock/sealing.ts';
import { createVault, type Vault } from './lock/vault.ts';
import type { LockCrypto } from './lock/wrapped-key.ts';
import { type Person, type PersonId, SELF } from './person.ts';
import type { RepEdit } from './rep-edit.ts';
import type { ResultInRow } from './result-in-row.ts';
import { withStandRow, withStandsRow } from './stand-time-row.ts';
import type { SetHeader, SetRunState } from './stored-set.ts';
import type { Connection, ServerChoice } from './sync/sync-store.ts';

export interface SetRow extends SetHeader {
  readonly state: SetRunState;
}
/** A repetition as it was counted live; kept beside the result. */
export interface RepRow {
  readonly setId: string;
  readonly number: number;
  readonly rep: MeasuredRep;
}
export interface ResultRow {
  readonly setId: string;
  readonly result: ResultInRow;
}
/** `seq` is given by the database; the order of edits is by their moments (`written-after.ts`). */
export type EditRow = RepEdit & { readonly seq?: number };

/** The id that a record has on its way, and whose it is here. */
export interface RecordIdRow {
  readonly id: string;
  readonly person: PersonId;
}

/** A record that the person's server has. */
export interface ConfirmedRow {
  readonly person: PersonId;
  readonly id: string;
}

/** An entry with whose diary it stands in. */
export type DiaryRow = DiaryEntry & { readonly person: PersonId };

export type Database = Dexie & {
  readonly people: Table<Person, PersonId>;
  /** Worked out from the diary and the sets; a person whose row is not there has changed since. */
  readonly facts: Table<FactsRow, PersonId>;
  readonly sets: Table<SetRow, string>;
  readonly reps: Table<RepRow, [string, number]>;
  readonly results: Table<ResultRow, string>;
  readonly edits: Table<EditRow, number>;
  /** Under which ids a person's record goes from one machine to another. */
  readonly recordIds: Table<RecordIdRow, string>;
  /** Which server knows a person, and how far it went. */
  readonly servers: Table<Connection, PersonId>;
  readonly serverChoices: Table<ServerChoice, PersonId>;
  /** The records that their server has. */
  readonly confirmed: Table<ConfirmedRow, [PersonId, string]>;
  /** One row while the passphrase lock is on. */
  readonly lock: Table<LockRow, string>;
  readonly diary: Table<DiaryRow, string>;
};

/** One shape of the database. `upgrade` turns the rows of the shape before into this one's, a pure function for each table that changes. */
export interface DatabaseVersion {
  readonly version: number;
  /** Keys and indexes, in Dexie's notation; a table not named here stays as it was. */
  readonly stores: Readonly<Record<string, string>>;
  readonly upgrade?: Readonly<Record<string, (row: unknown) => unknown>>;
}

/** A set's row of version 1, which had no dose, as one of version 2. Whatever else stands there is left for the reader to call damaged. */
function withDose(row: unknown): unknown {
  const isOld = typeof row === 'object' && row !== null && 'schema' in row && row.schema === 1;
  return isOld ? { ...row, schema: 2, targetReps: null } : row;
}

/** An entry of version 5, when there was one person only. */
const ofSelf = (row: unknown): unknown =>
  typeof row === 'object' && row !== null && !('person' in row) ? { ...row, person: SELF } : row;

/**
 * All shapes so far, oldest first: THE place for migrations. A released entry is never edited; a change of shape is a new entry at the end,
 * with a test that opens an old database.
 */
export const VERSIONS: readonly DatabaseVersion[] = [
  {
    version: 1,
    stores: {
      sets: 'id, [startedAt+id], state',
      reps: '[setId+number]',
      results: 'setId',
      edits: '++seq, &id, setId',
    },
  },
  { version: 2, stores: {}, upgrade: { sets: withDose } },
  { version: 3, stores: {}, upgrade: { reps: withFootRow, results: withOnsetRow } },
  { version: 4, stores: {}, upgrade: { reps: withStandRow, results: withStandsRow } },
  { version: 5, stores: { diary: 'id, day, kind, origin' } },
  {
    version: 6,
    stores: {
      people: 'id',
      facts: 'person',
      sets: 'id, [person+startedAt+id], state',
      diary: 'id, [person+day], [person+origin]',
    },
    upgrade: { diary: ofSelf },
  },
  { version: 7, stores: { lock: 'id' } },
  { version: 8, stores: {}, upgrade: { results: withGlideRow } },
  { version: 9, stores: { recordIds: 'id' } },
  { version: 11, stores: { servers: 'person', confirmed: '[person+id]' } },
  // No row changes: the diary may have entries that say what was removed, which a program of before would call damaged.
  { version: 12, stores: { serverChoices: 'person' } },
  // No row changes: results may have their curves as steps, which a program of before would call damaged.
  { version: 13, stores: {} },
];

/** The version that the database has once it is open. */
export const newestOf = (versions: readonly DatabaseVersion[]): number => Math.max(...versions.map(({ version }) => version));

export const DATABASE_NAME = 'evenside';

/** The parts of the browser that the store stands on. */
export interface StorePlatform {
  readonly indexedDB: IDBFactory;
  readonly IDBKeyRange: typeof IDBKeyRange;
  readonly locks: Pick<LockManager, 'request'>;
  readonly crypto: LockCrypto;
}

/** A row of an earlier shape in the shape of now. A sealed one, which can't be changed before it is opened, goes through this when it is. */
const upgradedBy =
  (versions: readonly DatabaseVersion[]) =>
  (table: string, row: unknown, from: number): unknown =>
    versions.reduce((now, { version, upgrade }) => (version > from && upgrade?.[table] ? upgrade[table](now) : now), row);

/** The database, not yet opened. Writes wait for the disk (`strict`), not only for the operating system. @param vault its lock's key */
export function database(
  { indexedDB, IDBKeyRange, crypto }: StorePlatform,
  versions: readonly DatabaseVersion[] = VERSIONS,
  vault: Vault = createVault(),
): Database {
  const options = { indexedDB, IDBKeyRange, chromeTransactionDurability: 'strict', cache: 'disabled', autoOpen: false } as const;
  const db = new Dexie(DATABASE_NAME, options) as Database;
  const shapes = { newest: newestOf(versions), upgraded: upgradedBy(versions) };
  db.use(sealing(vault, shapes, (bytes) => crypto.getRandomValues(bytes)));
  for (const { version, stores, upgrade } of versions) {
    const declared = db.version(version).stores(stores);
    if (!upgrade) continue;
    declared.upgrade(async (transaction) => {
      for (const [table, change] of Object.entries(upgrade)) {
        await transaction
          .table(table)
          .toCollection()
          .modify((row: unknown, ref: { value: unknown }) => {
            ref.value = isSealed(row) ? row : change(row);
          });
      }
    });
  }
  return db;
}
