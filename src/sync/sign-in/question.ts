import { type Role, scopesFor } from './scopes.ts';
import type { SmartServer } from './smart-server.ts';

/** What a page must still know when the person comes back from signing in. None of it is of use to anybody without the code that comes back. */
export interface Question {
  /** Address of the FHIR base. */
  readonly base: string;
  readonly clientId: string;
  readonly role: Role;
  /** To stay signed in on this machine. */
  readonly keep: boolean;
  readonly redirectUri: string;
  /** Random; the answer must bring it. */
  readonly state: string;
  /** Random; only who knows it gets a token for the code (PKCE, RFC 7636). */
  readonly verifier: string;
  /** ms since 1970. */
  readonly askedAtMs: number;
  /** Where in the page the person was: the part of the address from the `#`. */
  readonly back: string;
}

/** An answer that comes later belongs to nothing any more. Chosen: time enough to look for a password. */
const LATEST_MS = 30 * 60_000;

/** Whether an answer is the one to this question. */
export const isAnswerTo = (question: Question, answer: URLSearchParams, nowMs: number): boolean =>
  answer.get('state') === question.state && nowMs - question.askedAtMs <= LATEST_MS;

/** Where the person goes to sign in. @param challenge made of the verifier with S256 */
export function addressOf(server: SmartServer, question: Question, challenge: string): string {
  const url = new URL(server.authorize);
  const asked = {
    response_type: 'code',
    client_id: question.clientId,
    redirect_uri: question.redirectUri,
    scope: scopesFor(question.role, question.keep),
    state: question.state,
    // Which server the token is for, so that no other can pass it on.
    aud: question.base,
    code_challenge: challenge,
    code_challenge_method: 'S256',
  };
  for (const [name, value] of Object.entries(asked)) url.searchParams.set(name, value);
  return url.href;
}
