import { describe, expect, test } from 'vitest';
import { redeem } from '../../../src/sync/sign-in/oauth.ts';
import { wentWell } from '../../record/went-well.ts';
import { cameBack, clinic, patientOf, questionFor, requestsTo, sessionOver, signedIn } from './signed-in.ts';

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
