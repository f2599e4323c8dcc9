import { afterEach } from 'vitest';
import { fhirServer } from '../../../src/sync/fhir-server.ts';
import { challengeOf, newSecret, redeem, type TokenRequests } from '../../../src/sync/sign-in/oauth.ts';
import { addressOf, type Question } from '../../../src/sync/sign-in/question.ts';
import type { Role } from '../../../src/sync/sign-in/scopes.ts';
import { createSession, type Session } from '../../../src/sync/sign-in/session.ts';
import { readSmartServer } from '../../../src/sync/sign-in/smart-server.ts';
import { wentWell } from '../../record/went-well.ts';
import { CLIENT, type SmartOptions, smartEndpoint } from './smart-endpoint.ts';

export const PAGE = 'http://127.0.0.1:1/evenside/';
export const PATIENT = 'Patient/invented-1';

const closing: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0)) await close();
});
export async function clinic(options: Partial<SmartOptions> = {}) {
  const made = await smartEndpoint({ redirectUris: [PAGE], ...options });
  let closed: Promise<void> | null = null;
  const close = () => {
    closed ??= made.close();
    return closed;
  };
  closing.push(close);
  await made.repository.createResource({ resourceType: 'Patient', id: 'invented-1' });
  await made.repository.createResource({ resourceType: 'Patient', id: 'invented-2' });
  return { ...made, close };
}
export type Clinic = Awaited<ReturnType<typeof clinic>>;

export const http = (url: string, request: RequestInit) => fetch(url, request);
export const requestsTo = async ({ base, origin }: Clinic, nowMs: () => number): Promise<TokenRequests> => ({
  server: wentWell(await readSmartServer(http, base, [origin])),
  clientId: CLIENT,
  fetch,
  nowMs,
});
export const questionFor = ({ base }: Clinic, over: Partial<Question> = {}): Question => ({
  base,
  clientId: CLIENT,
  role: 'patient',
  keep: false,
  redirectUri: PAGE,
  state: newSecret(),
  verifier: newSecret(),
  askedAtMs: 0,
  back: '#/server',
  ...over,
});

/** Asks, is allowed, and comes back. */
export async function cameBack(
  server: Clinic,
  requests: TokenRequests,
  question: Question,
  allows = true,
): Promise<URLSearchParams> {
  const address = addressOf(requests.server, question, await challengeOf(question.verifier));
  return (await server.person(address, allows)).searchParams;
}

export interface SignedIn {
  readonly session: Session;
  readonly requests: TokenRequests;
  /** What is kept beyond the page's life. */
  readonly disk: { token: string | null };
}
export function sessionOver(requests: TokenRequests, disk: SignedIn['disk'], nowMs: () => number): Session {
  return createSession({
    requests: async () => ({ ok: true, value: requests }),
    kept: {
      read: async () => disk.token,
      write: async (token) => {
        disk.token = token;
      },
    },
    alone: (call) => call(),
    nowMs,
  });
}
export async function signedIn(server: Clinic, role: Role, keep: boolean, nowMs: () => number = Date.now): Promise<SignedIn> {
  const requests = await requestsTo(server, nowMs);
  const question = questionFor(server, { role, keep });
  const tokens = wentWell(await redeem(requests, question, await cameBack(server, requests, question)));
  const disk = { token: null };
  const session = sessionOver(requests, disk, nowMs);
  await session.begin(tokens, keep);
  return { session, requests, disk };
}
export const patientOf = (base: string, session: Session, id: string) =>
  fhirServer({ http, nowMs: Date.now, chance: () => 0.5, wait: async () => undefined, newId: newSecret }, base, session).get(
    `${base}/Patient/${id}`,
  );
