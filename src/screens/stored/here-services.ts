import type { PoseModel } from '../../pose/model.ts';
import type { Persistence } from '../../record/persistence.ts';
import type { StoreError } from '../../record/store-error.ts';
import type { StoredRows } from '../../record/stored-rows.ts';
import type { Result } from '../../result.ts';

/** What the browser keeps of the program itself, bytes. */
export interface KeptProgram {
  readonly site: number;
  readonly models: readonly { readonly model: PoseModel; readonly bytes: number }[];
}

/** The room that the browser gives this address, bytes. */
export interface Room {
  readonly used: number;
  readonly given: number;
}

/** What is stored on this machine, by how much. */
export interface HereServices {
  readonly rows: () => Promise<Result<StoredRows, Pick<StoreError, 'kind'>>>;
  readonly program: () => Promise<KeptProgram>;
  /** Null: the browser does not tell. */
  readonly room: () => Promise<Room | null>;
  /** Whether the browser has promised to keep it; asks nothing. */
  readonly persistence: () => Promise<Persistence>;
  /** Asks the browser to promise it. To be called from a click. */
  readonly askToKeep: () => Promise<Persistence>;
}
