import { fail, ok, type Result } from '../../result.ts';
import type { Access } from '../access.ts';
import type { ServerError } from '../server-error.ts';
import { refreshed, revoked, type TokenRequests } from './oauth.ts';
import type { SignInError } from './sign-in-error.ts';
import type { Tokens } from './tokens.ts';

/** So long before its end a token is renewed, so that it does not end on its way. Chosen. */
const EARLY_MS = 30_000;

/** Where the one token that outlives the page is kept, if the person wants that. */
export interface KeptToken {
  readonly read: () => Promise<string | null>;
  readonly write: (refresh: string | null) => Promise<void>;
}

export interface SessionNeeds {
  /** Where tokens are given; asked again as long as it fails. */
  readonly requests: () => Promise<Result<TokenRequests, SignInError>>;
  readonly kept: KeptToken;
  /** One at a time among all tabs: a server may take a token for new ones only once. */
  readonly alone: <T>(call: () => Promise<T>) => Promise<T>;
  readonly nowMs: () => number;
}

/** Somebody signed in at a server. Tokens are in the memory of the page, and nowhere else unless they are kept. */
export interface Session extends Access {
  readonly isIn: () => Promise<boolean>;
  /** Null: not signed in, or not asked for a token since the page was opened. */
  readonly tokens: () => Tokens | null;
  /** @param keep beyond the life of the page */
  readonly begin: (tokens: Tokens, keep: boolean) => Promise<void>;
  /** Forgets all tokens, then has the server take them back. @returns whether the server said that it did; null: there was nothing to take back */
  readonly end: () => Promise<boolean | null>;
}

export function createSession({ requests, kept, alone, nowMs }: SessionNeeds): Session {
  let now: Tokens | null = null;
  let renewing: Promise<Result<string, ServerError>> | null = null;
  let ended = 0;
  let keeping = false;

  const drop = async (): Promise<Result<string, ServerError>> => {
    now = null;
    keeping = false;
    await kept.write(null);
    return fail({ kind: 'signed-out' });
  };

  const renew = async (): Promise<Result<string, ServerError>> => {
    const turn = ended;
    // Another tab may have renewed it, or signed out, meanwhile.
    const stored = await kept.read();
    const refresh = stored ?? (keeping ? null : (now?.refresh ?? null));
    if (refresh === null) return drop();
    keeping = stored !== null;
    const where = await requests();
    if (!where.ok) return fail({ kind: 'unreachable' });
    const before = now ?? { access: '', endsAtMs: null, refresh, patient: null };
    const found = await refreshed(where.value, { ...before, refresh });
    if (turn !== ended) return fail({ kind: 'signed-out' });
    if (!found.ok) return found.error.kind === 'unreachable' ? fail({ kind: 'unreachable' }) : drop();
    now = found.value;
    if (keeping) await kept.write(found.value.refresh);
    return ok(found.value.access);
  };

  /** All that ask at once get the same answer. */
  const renewOnce = (): Promise<Result<string, ServerError>> => {
    renewing ??= alone(renew).finally(() => {
      renewing = null;
    });
    return renewing;
  };

  return {
    isIn: async () => now !== null || (await kept.read()) !== null,
    tokens: () => now,
    async begin(tokens, keep) {
      now = tokens;
      keeping = keep && tokens.refresh !== null;
      await kept.write(keep ? tokens.refresh : null);
    },
    async end() {
      const stored = await kept.read();
      const token = stored ?? now?.refresh ?? now?.access ?? null;
      now = null;
      keeping = false;
      ended += 1;
      await kept.write(null);
      if (token === null) return null;
      const where = await requests();
      return where.ok && (await revoked(where.value, token));
    },
    token: async () => (now && (now.endsAtMs === null || now.endsAtMs - nowMs() > EARLY_MS) ? ok(now.access) : renewOnce()),
    renewed: async (refused) => (now && now.access !== refused ? ok(now.access) : renewOnce()),
  };
}
