import type { StoreApi } from 'zustand/vanilla';
import type { PersonId } from '../../record/person.ts';
import type { Connection } from '../../record/sync/sync-store.ts';
import type { Result } from '../../result.ts';
import type { Sent } from '../../sync/send-waiting.ts';
import type { ServerError } from '../../sync/server-error.ts';
import type { SignInError } from '../../sync/sign-in/sign-in-error.ts';
import type { Taken } from '../../sync/take-in-new.ts';
import type { Problem } from '../problem.ts';

/** Why the server was not reached or did not answer as it should. Nothing here is lost. */
export type ServerFault =
  | { readonly kind: 'server'; readonly error: ServerError }
  | { readonly kind: 'sign-in'; readonly error: SignInError }
  | { readonly kind: 'elsewhere' };

/** How one person stands to the server. */
export interface ServerState {
  /** Null: not connected. */
  readonly connection: Connection | null;
  /** Records that the server has not confirmed. */
  readonly waiting: number;
  /** `none`: an open server, without sign-in. */
  readonly signIn: 'none' | 'out' | 'in';
  /** One's own records are sent by themselves; somebody else's are taken in by themselves. */
  readonly automatic: boolean;
  /** What came of a sign-in that the person came back from; null: all is well, or nobody did. */
  readonly returned: SignInError | null;
}

/** What became of the last sending by itself. */
export interface AutomaticState {
  readonly working: boolean;
  /** Null: no trouble. */
  readonly fault: Problem | ServerFault | null;
  /** Attempts that failed one after the other. */
  readonly failures: number;
  /** Null: nothing was sent by itself since the page was opened. */
  readonly sent: Sent | null;
}

/** What was taken in for all people of whom it was chosen. */
export interface TakenForAll {
  readonly people: number;
  readonly fresh: number;
  readonly grown: number;
  /** Of whom it did not work, and why; the others were taken in all the same. */
  readonly failed: readonly { readonly person: PersonId; readonly fault: Problem | ServerFault }[];
}

/** The clinic's server, for one person. */
export interface ServerServices {
  readonly state: () => Promise<Result<ServerState, Problem>>;
  /** Leaves the page for the server's own to sign in. @param keep to stay signed in on this machine */
  readonly signIn: (keep: boolean) => Promise<Result<null, ServerFault>>;
  /** @returns whether the server took the sign-in back, too; null: there was nothing to take back */
  readonly signOut: () => Promise<boolean | null>;
  /** Connects, when the server knows somebody of this id. @param id as the clinic gave it */
  readonly connect: (id: string) => Promise<Result<null, Problem | ServerFault>>;
  readonly disconnect: () => Promise<Result<null, Problem>>;
  readonly choose: (automatic: boolean) => Promise<Result<null, Problem>>;
  readonly send: () => Promise<Result<Sent, Problem | ServerFault>>;
  readonly takeIn: () => Promise<Result<Taken, Problem | ServerFault>>;
  readonly automatic: StoreApi<AutomaticState>;
  /** Sends what waits if the person chose that, there is a network and no set runs. */
  readonly sendByItself: () => Promise<void>;
  /** Takes in what is new of all people of whom it was chosen, one after the other. */
  readonly takeInForAll: () => Promise<TakenForAll>;
}
