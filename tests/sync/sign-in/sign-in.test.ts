/** Sign-in as SMART App Launch 2.2 has it (https://hl7.org/fhir/smart-app-launch/STU2.2/app-launch.html), against an authorization server of our own. */
import { afterEach, describe, expect, test } from 'vitest';
import { fhirServer } from '../../../src/sync/fhir-server.ts';
import { challengeOf, newSecret, redeem, type TokenRequests } from '../../../src/sync/sign-in/oauth.ts';
import { addressOf, isAnswerTo, type Question } from '../../../src/sync/sign-in/question.ts';
import { type Role, scopesFor } from '../../../src/sync/sign-in/scopes.ts';
import { createSession, type Session } from '../../../src/sync/sign-in/session.ts';
import { readSmartServer } from '../../../src/sync/sign-in/smart-server.ts';
import { livedRecords } from '../../fhir/lived-records.ts';
import { wentWell } from '../../record/went-well.ts';
import { machine } from '../machine.ts';
import { CLIENT, type SmartOptions, smartEndpoint } from './smart-endpoint.ts';

const PAGE = 'http://127.0.0.1:1/evenside/';
const PATIENT = 'Patient/invented-1';

const closing: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0)) await close();
});
async function clinic(options: Partial<SmartOptions> = {}) {
  const made = await smartEndpoint({ redirectUris: [PAGE], ...options });
  closing.push(made.close);
  await made.repository.createResource({ resourceType: 'Patient', id: 'invented-1' });
  await made.repository.createResource({ resourceType: 'Patient', id: 'invented-2' });
  return made;
}
type Clinic = Awaited<ReturnType<typeof clinic>>;

const http = (url: string, request: RequestInit) => fetch(url, request);
const requestsTo = async ({ base, origin }: Clinic, nowMs: () => number): Promise<TokenRequests> => ({
  server: wentWell(await readSmartServer(http, base, [origin])),
  clientId: CLIENT,
  fetch,
  nowMs,
});
const questionFor = ({ base }: Clinic, over: Partial<Question> = {}): Question => ({
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
async function cameBack(server: Clinic, requests: TokenRequests, question: Question, allows = true): Promise<URLSearchParams> {
  const address = addressOf(requests.server, question, await challengeOf(question.verifier));
  return (await server.person(address, allows)).searchParams;
}

interface SignedIn {
  readonly session: Session;
  readonly requests: TokenRequests;
  /** What is kept beyond the page's life. */
  readonly disk: { token: string | null };
}
function sessionOver(requests: TokenRequests, disk: SignedIn['disk'], nowMs: () => number): Session {
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
async function signedIn(server: Clinic, role: Role, keep: boolean, nowMs: () => number = Date.now): Promise<SignedIn> {
  const requests = await requestsTo(server, nowMs);
  const question = questionFor(server, { role, keep });
  const tokens = wentWell(await redeem(requests, question, await cameBack(server, requests, question)));
  const disk = { token: null };
  const session = sessionOver(requests, disk, nowMs);
  await session.begin(tokens, keep);
  return { session, requests, disk };
}
const patientOf = (base: string, session: Session, id: string) =>
  fhirServer({ http, nowMs: Date.now, chance: () => 0.5, wait: async () => undefined, newId: newSecret }, base, session).get(
    `${base}/Patient/${id}`,
  );

test('a verifier becomes the challenge of RFC 7636, appendix B', async () => {
  expect(await challengeOf('dBjftJeZ4CVP-mB92K27uhbUJU1p1r_wW1gFWFOEjXk')).toBe('E9Melhoa2OwvFrEMTJguCHaoeK1t8URWbuGJSstw-cM');
});

test('secrets are of the length and letters that RFC 7636 asks for, and none comes twice', () => {
  const secrets = Array.from({ length: 100 }, newSecret);
  for (const secret of secrets) expect(secret).toMatch(/^[A-Za-z0-9\-._~]{43,128}$/);
  expect(new Set(secrets).size).toBe(100);
});

test('the person is sent on with all that the guide asks for, the secret itself left out', async () => {
  const server = await clinic();
  const { server: smart } = await requestsTo(server, Date.now);
  const question = questionFor(server);
  const asked = new URL(addressOf(smart, question, 'the-challenge'));
  expect(asked.origin + asked.pathname).toBe(`${server.origin}/authorize`);
  expect(Object.fromEntries(asked.searchParams)).toEqual({
    response_type: 'code',
    client_id: CLIENT,
    redirect_uri: PAGE,
    scope:
      'launch/patient patient/Patient.r patient/DocumentReference.crs patient/Observation.cus patient/CarePlan.cus patient/ServiceRequest.cus patient/QuestionnaireResponse.cs patient/Device.cs online_access',
    state: question.state,
    aud: server.base,
    code_challenge: 'the-challenge',
    code_challenge_method: 'S256',
  });
  expect(asked.href).not.toContain(question.verifier);
  expect(scopesFor('therapist', false)).not.toMatch(/patient\//);
});

describe('records of somebody who signed in', () => {
  test('are sent as a patient and taken in as a therapist, with no more than the scopes that were asked for', async () => {
    const server = await clinic();
    const own = await signedIn(server, 'patient', false);
    expect(own.session.tokens()?.patient).toBe('invented-1');
    const patient = await machine(server.base, PATIENT, 'own', { access: own.session });
    const { sets, diary } = livedRecords();
    await patient.has(sets);
    wentWell(await patient.store.diary.add(diary));
    expect(wentWell(await patient.send()).unwanted).toEqual([]);
    const desk = await signedIn(server, 'therapist', false);
    expect(desk.session.tokens()?.patient).toBeNull();
    const therapist = await machine(server.base, PATIENT, 'looked-after', { access: desk.session });
    expect(wentWell(await therapist.takeIn()).fresh).toBe(sets.length + diary.length);
    expect(server.seen.refused).toEqual([]);
    expect(await therapist.all()).toEqual(await patient.all());
  });

  test('of another patient are out of reach, and so is everything without a token', async () => {
    const server = await clinic();
    const { session } = await signedIn(server, 'patient', false);
    expect((await patientOf(server.base, session, 'invented-1')).ok).toBe(true);
    expect(await patientOf(server.base, session, 'invented-2')).toEqual({
      ok: false,
      error: { kind: 'not-allowed', status: 403 },
    });
    expect((await fetch(`${server.base}/Patient/invented-1`)).status).toBe(401);
  });
});

describe('a token that ended', () => {
  test('is replaced before it is used, and one that the server refuses early is replaced once', async () => {
    let nowMs = Date.now();
    const server = await clinic({ clock: () => nowMs, expiresIn: 100 });
    const { session } = await signedIn(server, 'patient', false, () => nowMs);
    nowMs += 80_000;
    expect((await patientOf(server.base, session, 'invented-1')).ok).toBe(true);
    expect(server.seen.tokens).toEqual(['authorization_code', 'refresh_token']);
    expect(server.requests.some(({ status }) => status === 401)).toBe(false);
    const late = await clinic({ clock: () => nowMs, expiresIn: 100 });
    const slow = await signedIn(late, 'patient', false, () => Date.now() - 3_600_000);
    nowMs += 200_000;
    expect((await patientOf(late.base, slow.session, 'invented-1')).ok).toBe(true);
    expect(late.requests.map(({ status }) => status)).toEqual([200, 401, 200]);
  });

  test('is renewed once for all who ask at the same moment', async () => {
    let nowMs = Date.now();
    const server = await clinic({ clock: () => nowMs, expiresIn: 100 });
    const { session } = await signedIn(server, 'patient', false, () => nowMs);
    nowMs += 200_000;
    const found = await Promise.all([session.token(), session.token(), session.token()]);
    expect(new Set(found.map((each) => (each.ok ? each.value : each.error.kind))).size).toBe(1);
    expect(server.seen.tokens).toEqual(['authorization_code', 'refresh_token']);
  });

  test('without another one ends the sign-in; while the server is away nothing is given up', async () => {
    let nowMs = Date.now();
    let away = true;
    const server = await clinic({ clock: () => nowMs, expiresIn: 100, tokenFault: () => (away ? 503 : null) });
    const requests = await requestsTo(server, () => nowMs);
    const question = questionFor(server);
    const answer = await cameBack(server, requests, question);
    expect(await redeem(requests, question, answer)).toEqual({ ok: false, error: { kind: 'unreachable' } });
    away = false;
    const session = sessionOver(requests, { token: null }, () => nowMs);
    await session.begin(wentWell(await redeem(requests, question, answer)), false);
    nowMs += 200_000;
    away = true;
    expect(await session.token()).toEqual({ ok: false, error: { kind: 'unreachable' } });
    expect(await session.isIn()).toBe(true);
    away = false;
    expect((await session.token()).ok).toBe(true);
    await session.begin({ access: 'x', endsAtMs: nowMs - 1, refresh: null, patient: null }, false);
    expect(await session.token()).toEqual({ ok: false, error: { kind: 'signed-out' } });
    expect(await session.isIn()).toBe(false);
  });
});

describe('staying signed in', () => {
  test('is one token on disk, replaced with each use; another page goes on with it', async () => {
    const server = await clinic();
    const { session, requests, disk } = await signedIn(server, 'patient', true);
    const first = disk.token;
    expect(first).not.toBeNull();
    const later = sessionOver(requests, disk, Date.now);
    expect(await later.isIn()).toBe(true);
    expect((await patientOf(server.base, later, 'invented-1')).ok).toBe(true);
    expect(disk.token).not.toBe(first);
    await later.end();
    expect(disk.token).toBeNull();
    // The page that was open meanwhile has no say against that.
    expect(await session.renewed(session.tokens()?.access ?? '')).toEqual({ ok: false, error: { kind: 'signed-out' } });
    expect(server.good()).toBe(0);
  });

  test('is not there unless it was wanted', async () => {
    const { session, requests, disk } = await signedIn(await clinic(), 'patient', false);
    expect(disk.token).toBeNull();
    expect(await sessionOver(requests, disk, Date.now).isIn()).toBe(false);
    expect(await session.isIn()).toBe(true);
  });
});

test('signing out forgets the tokens and has the server take them back', async () => {
  const server = await clinic();
  const { session } = await signedIn(server, 'patient', false);
  const access = session.tokens()?.access;
  expect(await session.end()).toBe(true);
  expect(session.tokens()).toBeNull();
  const asked = await fetch(`${server.base}/Patient/invented-1`, { headers: { authorization: `Bearer ${access}` } });
  expect(asked.status).toBe(401);
  expect(await session.end()).toBeNull();
});

describe('nobody is signed in', () => {
  test('who was refused', async () => {
    const server = await clinic();
    const requests = await requestsTo(server, Date.now);
    const question = questionFor(server);
    const answer = await cameBack(server, requests, question, false);
    expect(await redeem(requests, question, answer)).toEqual({ ok: false, error: { kind: 'denied' } });
  });

  test('by a code that was used before, which also ends what came of it', async () => {
    const server = await clinic();
    const requests = await requestsTo(server, Date.now);
    const question = questionFor(server);
    const answer = await cameBack(server, requests, question);
    wentWell(await redeem(requests, question, answer));
    expect(await redeem(requests, question, answer)).toEqual({ ok: false, error: { kind: 'too-late' } });
    expect(server.good()).toBe(0);
  });

  test.each([
    ['another verifier', { verifier: newSecret() }],
    ['another redirect', { redirectUri: `${PAGE}?` }],
  ])('with %s than the question had', async (_, over) => {
    const server = await clinic();
    const requests = await requestsTo(server, Date.now);
    const question = questionFor(server);
    const answer = await cameBack(server, requests, question);
    expect(await redeem(requests, { ...question, ...over }, answer)).toEqual({ ok: false, error: { kind: 'too-late' } });
  });

  test('by an answer with another state, or one that comes too late', async () => {
    const server = await clinic();
    const requests = await requestsTo(server, Date.now);
    const question = questionFor(server);
    const answer = await cameBack(server, requests, question);
    expect(isAnswerTo(question, answer, 29 * 60_000)).toBe(true);
    expect(isAnswerTo(question, answer, 31 * 60_000)).toBe(false);
    answer.set('state', newSecret());
    expect(isAnswerTo(question, answer, 0)).toBe(false);
    expect((await redeem(requests, question, answer)).ok).toBe(false);
    expect(server.seen.tokens).toEqual([]);
  });

  test('at a page that is not registered', async () => {
    const server = await clinic();
    const requests = await requestsTo(server, Date.now);
    await expect(cameBack(server, requests, questionFor(server, { redirectUri: `${PAGE}other` }))).rejects.toThrow(
      'unknown redirect_uri',
    );
  });
});

describe('a server is not signed in to', () => {
  test.each([
    ['without S256', { code_challenge_methods_supported: ['plain'] }, { kind: 'not-offered', missing: 'S256' }],
    ['of version 1', { capabilities: ['launch-standalone', 'client-public'] }, { kind: 'not-offered', missing: 'permission-v2' }],
    [
      'that wants it unencrypted',
      { token_endpoint: 'http://login.example.org/token' },
      { kind: 'not-offered', missing: 'token_endpoint' },
    ],
    [
      'that sends elsewhere',
      { authorization_endpoint: 'javascript:alert(1)' },
      { kind: 'not-offered', missing: 'authorization_endpoint' },
    ],
    [
      'whose tokens are elsewhere',
      { token_endpoint: 'https://elsewhere.example/token' },
      { kind: 'other-origin', origin: 'https://elsewhere.example' },
    ],
  ])('%s', async (_, over, error) => {
    const { base, origin } = await clinic({ smart: (told) => ({ ...told, ...over }) });
    expect(await readSmartServer(http, base, [origin])).toEqual({ ok: false, error });
  });

  test('that tells nothing of it, or is away', async () => {
    const { base, close } = await clinic({ smart: () => null });
    expect(await readSmartServer(http, base, [])).toEqual({
      ok: false,
      error: { kind: 'not-offered', missing: 'smart-configuration' },
    });
    await close();
    closing.pop();
    expect(await readSmartServer(http, base, [])).toEqual({ ok: false, error: { kind: 'unreachable' } });
  });
});
