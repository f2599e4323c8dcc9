import { fail, ok, type Result } from '../../result.ts';
import type { Http } from '../http.ts';
import type { SignInError } from './sign-in-error.ts';

/** Where somebody signs in at a FHIR server, and where tokens are given and taken back. */
export interface SmartServer {
  readonly issuer: string;
  readonly authorize: string;
  readonly token: string;
  /** Null: the server takes none back. */
  readonly revoke: string | null;
  /** The answer to a sign-in names who gave it (RFC 9207). */
  readonly namesIssuer: boolean;
}

/** What a server must be able to do, by its name in SMART App Launch 2.2 (Conformance, capabilities). */
const CAPABILITIES = ['launch-standalone', 'client-public', 'permission-v2'] as const;

type Fields = Readonly<Record<string, unknown>>;
const has = (list: unknown, what: string): boolean => Array.isArray(list) && list.includes(what);

/** Encrypted, or on this machine itself. */
function safeUrl(address: unknown): URL | null {
  try {
    const url = typeof address === 'string' ? new URL(address) : null;
    const isHere = url?.protocol === 'http:' && ['localhost', '127.0.0.1', '[::1]'].includes(url.hostname);
    return url && (url.protocol === 'https:' || isHere) ? url : null;
  } catch {
    return null;
  }
}

function checked(found: Fields, base: string, origins: readonly string[]): Result<SmartServer, SignInError> {
  const missing = (what: string) => fail<SignInError>({ kind: 'not-offered', missing: what });
  const [authorize, token] = [safeUrl(found.authorization_endpoint), safeUrl(found.token_endpoint)];
  if (!authorize) return missing('authorization_endpoint');
  if (!token) return missing('token_endpoint');
  // Without it whoever sees the code on its way could use it.
  if (!has(found.code_challenge_methods_supported, 'S256')) return missing('S256');
  for (const each of CAPABILITIES) if (!has(found.capabilities, each)) return missing(each);
  const allowed = [new URL(base).origin, ...origins];
  if (!allowed.includes(token.origin)) return fail({ kind: 'other-origin', origin: token.origin });
  const revoke = safeUrl(found.revocation_endpoint);
  return ok({
    issuer: typeof found.issuer === 'string' ? found.issuer : base,
    authorize: authorize.href,
    token: token.href,
    revoke: revoke && allowed.includes(revoke.origin) ? revoke.href : null,
    namesIssuer: found.authorization_response_iss_parameter_supported === true,
  });
}

/**
 * Asks a FHIR server how to sign in: `.well-known/smart-configuration` (SMART App Launch 2.2). The older way, through the CapabilityStatement, was given up
 * by that guide and is not taken.
 * @param origins those besides the server's own that may be asked for tokens
 */
export async function readSmartServer(
  http: Http,
  base: string,
  origins: readonly string[],
): Promise<Result<SmartServer, SignInError>> {
  let found: unknown;
  try {
    const answer = await http(`${base}/.well-known/smart-configuration`, {
      method: 'GET',
      headers: { accept: 'application/json' },
    });
    if (answer.status === 404) return fail({ kind: 'not-offered', missing: 'smart-configuration' });
    if (answer.status !== 200) return fail({ kind: 'unreachable' });
    found = JSON.parse(await answer.text());
  } catch (cause) {
    return fail(cause instanceof SyntaxError ? { kind: 'not-offered', missing: 'smart-configuration' } : { kind: 'unreachable' });
  }
  if (typeof found !== 'object' || found === null) return fail({ kind: 'not-offered', missing: 'smart-configuration' });
  return checked(found as Fields, base, origins);
}
