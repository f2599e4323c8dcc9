import { describe, expect, test } from 'vitest';
import { newSecret, redeem } from '../../../src/sync/sign-in/oauth.ts';
import { isAnswerTo } from '../../../src/sync/sign-in/question.ts';
import { readSmartServer } from '../../../src/sync/sign-in/smart-server.ts';
import { wentWell } from '../../record/went-well.ts';
import { cameBack, clinic, http, PAGE, questionFor, requestsTo } from './signed-in.ts';

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
    expect(await readSmartServer(http, base, [])).toEqual({ ok: false, error: { kind: 'unreachable' } });
  });
});
