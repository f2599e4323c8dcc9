import type { RecordFile } from '../../record/file/read-record.ts';
import type { RecordFileError } from '../../record/file/record-file-error.ts';
import type { Brought, Into } from '../../record/file/record-store.ts';
import type { Person, PersonId } from '../../record/person.ts';
import type { Result } from '../../result.ts';
import type { Problem } from '../problem.ts';

/** Why a record was not taken in. Nothing of it was kept. */
export type RecordFault =
  | RecordFileError
  | { readonly kind: 'file-unreadable' }
  | { readonly kind: 'record-elsewhere'; readonly person: PersonId; readonly count: number };

/** What a file turned out to be. */
export type OpenedFile =
  | { readonly kind: 'record'; readonly record: RecordFile }
  /** A plan; `code` as a link has it. */
  | { readonly kind: 'plan'; readonly code: string };

export interface WrittenRecord {
  readonly file: Blob;
  readonly sets: number;
  readonly entries: number;
  /** What is stored but can't be read, and so is not in it. */
  readonly damaged: number;
}

/** Records on their way, as the screens ask for them. */
export interface RecordServices {
  /**
   * Writes the record of whose services these are.
   * @param passphrase null: readable for whoever has the file
   * @param onProgress share of the work that is done, below 1; never called where it is over at once
   */
  readonly write: (
    who: { readonly name: string | null; readonly affectedSide: Person['affectedSide'] },
    passphrase: string | null,
    onProgress?: (share: number) => void,
  ) => Promise<Result<WrittenRecord, Problem>>;
  /** Reads and checks a whole file. @param onProgress share of it that is checked */
  readonly open: (
    file: File,
    passphrase: string | null,
    onProgress?: (share: number) => void,
  ) => Promise<Result<OpenedFile, RecordFault>>;
  /** For whom a record was taken in before; null: for nobody. */
  readonly ownerOf: (record: RecordFile) => Promise<Result<PersonId | null, Problem>>;
  /** What taking it in would do. @param into null: somebody new */
  readonly looked: (into: PersonId | null, record: RecordFile) => Promise<Result<Brought, Problem | RecordFault>>;
  /** @param onProgress share of its sets that is written */
  readonly taken: (
    into: Into,
    record: RecordFile,
    onProgress?: (share: number) => void,
  ) => Promise<Result<Brought, Problem | RecordFault>>;
}
