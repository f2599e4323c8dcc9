import type { Connection } from '../../record/sync/sync-store.ts';
import type { Result } from '../../result.ts';
import type { Sent } from '../../sync/send-waiting.ts';
import type { ServerError } from '../../sync/server-error.ts';
import type { Taken } from '../../sync/take-in-new.ts';
import type { Problem } from '../problem.ts';

/** Why the server was not reached or did not answer as it should. Nothing here is lost. */
export type ServerFault = { readonly kind: 'server'; readonly error: ServerError } | { readonly kind: 'elsewhere' };

/** How one person stands to the server. */
export interface ServerState {
  /** Null: not connected. */
  readonly connection: Connection | null;
  /** Records that the server has not confirmed. */
  readonly waiting: number;
}

/** The clinic's server, for one person. */
export interface ServerServices {
  readonly state: () => Promise<Result<ServerState, Problem>>;
  /** Connects, when the server knows somebody of this id. @param id as the clinic gave it */
  readonly connect: (id: string) => Promise<Result<null, Problem | ServerFault>>;
  readonly disconnect: () => Promise<Result<null, Problem>>;
  readonly send: () => Promise<Result<Sent, Problem | ServerFault>>;
  readonly takeIn: () => Promise<Result<Taken, Problem | ServerFault>>;
}
