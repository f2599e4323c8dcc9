import * as oauth from 'oauth4webapi';
import { fail, ok, type Result } from '../../result.ts';
import type { Question } from './question.ts';
import type { SignInError } from './sign-in-error.ts';
import type { SmartServer } from './smart-server.ts';
import type { Tokens } from './tokens.ts';

/** The browser's `fetch`, as the library calls it. */
export type TokenFetch = (url: string, options: oauth.CustomFetchOptions<'POST', URLSearchParams>) => Promise<Response>;

/** What is needed to ask for tokens. */
export interface TokenRequests {
  readonly server: SmartServer;
  readonly clientId: string;
  readonly fetch: TokenFetch;
  readonly nowMs: () => number;
}

/** A secret of 256 random bits, for `Question.verifier` and `Question.state`. */
export const newSecret = (): string => oauth.generateRandomCodeVerifier();

/** S256 of a verifier (RFC 7636, 4.2). */
export const challengeOf = (verifier: string): Promise<string> => oauth.calculatePKCECodeChallenge(verifier);

const DETAIL_LENGTH = 200;

/** What the library threw, as what became of the sign-in. A request that failed is a TypeError of `fetch`, or the end of its patience. */
function errorOf(cause: unknown): SignInError {
  if (cause instanceof oauth.AuthorizationResponseError)
    return cause.error === 'access_denied'
      ? { kind: 'denied' }
      : { kind: 'refused', detail: (cause.error_description ?? cause.error).slice(0, DETAIL_LENGTH) };
  if (cause instanceof oauth.ResponseBodyError)
    return cause.error === 'invalid_grant'
      ? { kind: 'too-late' }
      : { kind: 'refused', detail: (cause.error_description ?? cause.error).slice(0, DETAIL_LENGTH) };
  if (cause instanceof oauth.WWWAuthenticateChallengeError || cause instanceof oauth.UnsupportedOperationError)
    return { kind: 'refused', detail: '' };
  if (cause instanceof oauth.OperationProcessingError) {
    const status = cause.cause instanceof Response ? cause.cause.status : 0;
    return status >= 500 || status === 429 ? { kind: 'unreachable' } : { kind: 'refused', detail: '' };
  }
  return { kind: 'unreachable' };
}

/** The library's way to say the same of server, client and network. */
function parts({ server, clientId, fetch }: TokenRequests) {
  const known: oauth.AuthorizationServer = {
    issuer: server.issuer,
    authorization_endpoint: server.authorize,
    token_endpoint: server.token,
    ...(server.revoke === null ? {} : { revocation_endpoint: server.revoke }),
    ...(server.namesIssuer ? { authorization_response_iss_parameter_supported: true } : {}),
  };
  const client: oauth.Client = { client_id: clientId };
  // `http:` gets here only for this machine itself, see `smart-server.ts`.
  const options = { [oauth.customFetch]: fetch, [oauth.allowInsecureRequests]: new URL(server.token).protocol === 'http:' };
  return { known, client, options };
}

const tokensOf = (found: oauth.TokenEndpointResponse, nowMs: number): Tokens => ({
  access: found.access_token,
  endsAtMs: found.expires_in === undefined ? null : nowMs + found.expires_in * 1000,
  refresh: found.refresh_token ?? null,
  patient: typeof found.patient === 'string' && found.patient !== '' ? found.patient : null,
});

/** Changes the code that came back into tokens. @param answer the search part of the address that the person came back to */
export async function redeem(
  requests: TokenRequests,
  question: Question,
  answer: URLSearchParams,
): Promise<Result<Tokens, SignInError>> {
  const { known, client, options } = parts(requests);
  try {
    const sound = oauth.validateAuthResponse(known, client, answer, question.state);
    const { redirectUri, verifier } = question;
    const asked = await oauth.authorizationCodeGrantRequest(known, client, oauth.None(), sound, redirectUri, verifier, options);
    return ok(tokensOf(await oauth.processAuthorizationCodeResponse(known, client, asked), requests.nowMs()));
  } catch (cause) {
    return fail(errorOf(cause));
  }
}

/** Asks for new tokens. One that the server does not replace stays good. */
export async function refreshed(requests: TokenRequests, before: Tokens): Promise<Result<Tokens, SignInError>> {
  if (before.refresh === null) return fail({ kind: 'too-late' });
  const { known, client, options } = parts(requests);
  try {
    const asked = await oauth.refreshTokenGrantRequest(known, client, oauth.None(), before.refresh, options);
    const found = tokensOf(await oauth.processRefreshTokenResponse(known, client, asked), requests.nowMs());
    return ok({ ...found, refresh: found.refresh ?? before.refresh, patient: found.patient ?? before.patient });
  } catch (cause) {
    return fail(errorOf(cause));
  }
}

/** Has the server take a token back (RFC 7009). @returns whether it said so */
export async function revoked(requests: TokenRequests, token: string): Promise<boolean> {
  if (requests.server.revoke === null) return false;
  const { known, client, options } = parts(requests);
  try {
    await oauth.processRevocationResponse(await oauth.revocationRequest(known, client, oauth.None(), token, options));
    return true;
  } catch {
    return false;
  }
}
