import { fail, ok, type Result } from '../result.ts';
import type { ServerError } from './server-error.ts';

/** What a server is shown with each request. */
export interface Access {
  /** The bearer token of the moment; null: the server is open. */
  readonly token: () => Promise<Result<string | null, ServerError>>;
  /** Another one in the place of what the server refused with 401. */
  readonly renewed: (refused: string) => Promise<Result<string, ServerError>>;
}

/** Of a server without sign-in. */
export const OPEN: Access = {
  token: async () => ok(null),
  renewed: async () => fail({ kind: 'signed-out' }),
};
