import { expect, test } from 'vitest';
import { signInOrigins } from '../../scripts/sign-in-origins.ts';

const SERVER = 'https://fhir.example.org/r4';
const answering =
  (body: unknown, status = 200): typeof fetch =>
  async () =>
    new Response(typeof body === 'string' ? body : JSON.stringify(body), { status });

test('the origins that give tokens and take them back are known, each once', async () => {
  const asked: string[] = [];
  const found = await signInOrigins(SERVER, async (url) => {
    asked.push(String(url));
    return Response.json({
      authorization_endpoint: 'https://pages.example.org/authorize',
      token_endpoint: 'https://login.example.org/oauth/token',
      revocation_endpoint: 'https://login.example.org/oauth/revoke',
    });
  });
  expect(found).toEqual({ ok: true, value: ['https://login.example.org'] });
  expect(asked).toEqual([`${SERVER}/.well-known/smart-configuration`]);
});

test.each([
  ['no answer', async () => Promise.reject(new TypeError('fetch failed'))],
  ['status 404', answering('', 404)],
  ['no JSON', answering('<html>')],
  ['it names no place for tokens', answering({ token_endpoint: 'nowhere' })],
  ['it names no place for tokens', answering(null)],
] as const)('%s: one sentence says what to do', async (why, ask) => {
  const found = await signInOrigins(SERVER, ask);
  expect(found.ok ? '' : found.error.words).toBe(
    `How to sign in could not be read from ${SERVER}/.well-known/smart-configuration (${why}): check the address, or name where tokens are given with --sign-in ORIGIN.`,
  );
});
