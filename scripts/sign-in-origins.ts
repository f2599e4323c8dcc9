import { fail, ok, type Result } from '../src/result.ts';

/** How long the server may take to answer, ms. Chosen. */
const PATIENCE_MS = 15_000;

export interface SignInUnread {
  readonly kind: 'sign-in-unread';
  readonly words: string;
}

const originOf = (address: unknown): string | null => {
  try {
    return typeof address === 'string' ? new URL(address).origin : null;
  } catch {
    return null;
  }
};

/**
 * Asks a FHIR server at which origins tokens are given and taken back (SMART App Launch 2.2, `.well-known/smart-configuration`).
 * @returns each once, of the token's and the revocation's address
 */
export async function signInOrigins(fhirServer: string, ask: typeof fetch): Promise<Result<readonly string[], SignInUnread>> {
  const address = `${fhirServer}/.well-known/smart-configuration`;
  const unread = (why: string) =>
    fail<SignInUnread>({
      kind: 'sign-in-unread',
      words: `How to sign in could not be read from ${address} (${why}): check the address, or name where tokens are given with --sign-in ORIGIN.`,
    });
  let found: unknown;
  try {
    const answer = await ask(address, {
      headers: { accept: 'application/json' },
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    if (!answer.ok) return unread(`status ${answer.status}`);
    found = await answer.json();
  } catch (cause) {
    return unread(cause instanceof SyntaxError ? 'no JSON' : 'no answer');
  }
  const { token_endpoint, revocation_endpoint } = (found ?? {}) as Readonly<Record<string, unknown>>;
  const token = originOf(token_endpoint);
  if (token === null) return unread('it names no place for tokens');
  const revocation = originOf(revocation_endpoint);
  return ok([...new Set(revocation === null ? [token] : [token, revocation])]);
}
