import { createHash, randomUUID } from 'node:crypto';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { type EndpointOptions, fhirEndpoint } from '../endpoint/fhir-endpoint.ts';
import { type Grant, mayAsk } from './scope-guard.ts';

export interface SmartOptions extends Omit<EndpointOptions, 'guard' | 'smart'> {
  /** Exactly as registered. */
  readonly redirectUris: readonly string[];
  /** Seconds that a token is good for. */
  readonly expiresIn?: number;
  /** Changes what `.well-known/smart-configuration` says. */
  readonly smart?: (told: Readonly<Record<string, unknown>>) => unknown;
  /** What the token endpoint answers instead, or null. */
  readonly tokenFault?: () => number | null;
}

interface Issued extends Grant {
  readonly family: string;
  readonly endsAtMs: number;
}
interface Code extends Grant {
  readonly redirectUri: string;
  readonly challenge: string;
  used: boolean;
  readonly family: string;
}

export const CLIENT = 'evenside-test';
const PATIENT = 'invented-1';
const ALLOWED_SCOPE = /^(launch\/patient|offline_access|online_access|(patient|user)\/[A-Za-z]+\.c?r?u?d?s?)$/;

const text = async (request: IncomingMessage): Promise<string> => {
  const parts: Buffer[] = [];
  for await (const part of request) parts.push(part as Buffer);
  return Buffer.concat(parts).toString('utf8');
};

/**
 * An authorization server of SMART App Launch 2.2 at an origin of its own, and before the FHIR endpoint a guard that knows its tokens: standalone launch, public
 * clients, S256 only. A code is good once, for one minute, with its verifier and exactly its redirect; a refresh token is good once; whoever uses one of them
 * twice loses all that came of it. No clinic's server.
 */
export async function smartEndpoint({
  redirectUris,
  expiresIn = 3600,
  smart = (told) => told,
  tokenFault = () => null,
  ...rest
}: SmartOptions) {
  const clock = rest.clock ?? Date.now;
  const codes = new Map<string, Code>();
  const access = new Map<string, Issued>();
  const refresh = new Map<string, Issued & { used: boolean }>();
  const dead = new Set<string>();
  const seen = { tokens: [] as string[], refused: [] as string[] };
  let uris = redirectUris;

  const guard: NonNullable<EndpointOptions['guard']> = ({ authorization, method, url, body }) => {
    const found = access.get(/^Bearer (.+)$/.exec(authorization ?? '')?.[1] ?? '');
    if (!found || found.endsAtMs <= clock() || dead.has(found.family)) return 401;
    if (mayAsk(found, method, url, body)) return null;
    seen.refused.push(`${method} ${url.pathname}`);
    return 403;
  };

  let origin = '';
  const fhir = await fhirEndpoint({
    ...rest,
    guard,
    smart: () =>
      smart({
        authorization_endpoint: `${origin}/authorize`,
        token_endpoint: `${origin}/token`,
        revocation_endpoint: `${origin}/revoke`,
        grant_types_supported: ['authorization_code'],
        code_challenge_methods_supported: ['S256'],
        capabilities: [
          'launch-standalone',
          'client-public',
          'permission-v2',
          'permission-patient',
          'permission-user',
          'context-standalone-patient',
        ],
      }),
  });

  const issue = (grant: Grant, family: string): Record<string, unknown> => {
    const [token, again] = [randomUUID(), randomUUID()];
    access.set(token, { ...grant, family, endsAtMs: clock() + expiresIn * 1000 });
    const staying = grant.scopes.some((scope) => scope === 'offline_access' || scope === 'online_access');
    if (staying) refresh.set(again, { ...grant, family, endsAtMs: Number.POSITIVE_INFINITY, used: false });
    return {
      access_token: token,
      token_type: 'Bearer',
      expires_in: expiresIn,
      scope: grant.scopes.join(' '),
      ...(grant.patient === null ? {} : { patient: grant.patient }),
      ...(staying ? { refresh_token: again } : {}),
    };
  };

  const tokens = (asked: URLSearchParams): Record<string, unknown> | string => {
    if (asked.get('client_id') !== CLIENT) return 'invalid_client';
    if (asked.get('grant_type') === 'refresh_token') {
      const found = refresh.get(asked.get('refresh_token') ?? '');
      if (!found || dead.has(found.family)) return 'invalid_grant';
      if (found.used) {
        dead.add(found.family);
        return 'invalid_grant';
      }
      found.used = true;
      return issue(found, found.family);
    }
    if (asked.get('grant_type') !== 'authorization_code') return 'unsupported_grant_type';
    const code = codes.get(asked.get('code') ?? '');
    if (!code) return 'invalid_grant';
    if (code.used) {
      dead.add(code.family);
      return 'invalid_grant';
    }
    const challenge = createHash('sha256')
      .update(asked.get('code_verifier') ?? '')
      .digest('base64url');
    if (challenge !== code.challenge || asked.get('redirect_uri') !== code.redirectUri) return 'invalid_grant';
    code.used = true;
    return issue(code, code.family);
  };

  /** Why a question is not even answered to the page, since it may be anybody's; null: it is sound. */
  const unsound = (asked: URLSearchParams): string | null => {
    if (asked.get('client_id') !== CLIENT) return 'unknown client';
    return uris.includes(asked.get('redirect_uri') ?? '') ? null : 'unknown redirect_uri';
  };
  const wrong = (asked: URLSearchParams): string | null => {
    const scopes = (asked.get('scope') ?? '').split(' ');
    if (asked.get('response_type') !== 'code') return 'unsupported_response_type';
    if (asked.get('aud') !== fhir.base || !asked.get('state')) return 'invalid_request';
    if (asked.get('code_challenge_method') !== 'S256' || asked.get('code_challenge')?.length !== 43) return 'invalid_request';
    return scopes.every((scope) => ALLOWED_SCOPE.test(scope)) ? null : 'invalid_scope';
  };
  /** Where the person is sent back to, after they said yes or no. */
  const decided = (asked: URLSearchParams, allows: boolean): string => {
    const back = new URL(asked.get('redirect_uri') ?? '');
    back.searchParams.set('state', asked.get('state') ?? '');
    const error = wrong(asked) ?? (allows ? null : 'access_denied');
    if (error) back.searchParams.set('error', error);
    else {
      const code = randomUUID();
      const scopes = (asked.get('scope') ?? '').split(' ');
      codes.set(code, {
        scopes,
        patient: scopes.includes('launch/patient') ? PATIENT : null,
        redirectUri: asked.get('redirect_uri') ?? '',
        challenge: asked.get('code_challenge') ?? '',
        used: false,
        family: randomUUID(),
      });
      back.searchParams.set('code', code);
    }
    return back.href;
  };

  const answer = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const url = new URL(request.url ?? '/', origin);
    const cors = { 'access-control-allow-origin': '*', 'access-control-allow-headers': 'accept, content-type' };
    const json = (status: number, body: unknown) =>
      response
        .writeHead(status, { ...cors, 'content-type': 'application/json', 'cache-control': 'no-store' })
        .end(JSON.stringify(body));
    if (request.method === 'OPTIONS') return void response.writeHead(204, cors).end();
    if (url.pathname === '/authorize') {
      const refused = unsound(url.searchParams);
      if (refused) return void response.writeHead(400, { 'content-type': 'text/plain' }).end(refused);
      const choice = url.searchParams.get('allows');
      if (choice !== null) {
        url.searchParams.delete('allows');
        return void response.writeHead(302, { location: decided(url.searchParams, choice === 'yes') }).end();
      }
      const link = (allows: string, words: string) =>
        `<p><a href="${`${url.search}&allows=${allows}`.replaceAll('&', '&amp;')}">${words}</a></p>`;
      const page = `<!doctype html><html lang="en"><title>Invented clinic</title><h1>Invented clinic</h1>${link('yes', 'Allow')}${link('no', 'Refuse')}`;
      return void response.writeHead(200, { 'content-type': 'text/html', 'cross-origin-opener-policy': 'same-origin' }).end(page);
    }
    const asked = new URLSearchParams(await text(request));
    if (url.pathname === '/token') {
      seen.tokens.push(asked.get('grant_type') ?? '');
      const fault = tokenFault();
      if (fault !== null) return void json(fault, {});
      const found = tokens(asked);
      return void (typeof found === 'string' ? json(400, { error: found }) : json(200, found));
    }
    if (url.pathname === '/revoke') {
      const token = asked.get('token') ?? '';
      const found = access.get(token) ?? refresh.get(token);
      if (found) dead.add(found.family);
      return void json(200, {});
    }
    json(404, {});
  };

  const server = createServer((request, response) => void answer(request, response).catch(() => response.destroy()));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  return {
    ...fhir,
    origin,
    seen,
    requests: fhir.seen,
    /** The page's address is known only once it is served. */
    register: (uri: string) => {
      uris = [...uris, uri];
    },
    /** What somebody does at the clinic's own page. @returns the address that they are sent back to */
    person: async (address: string, allows: boolean): Promise<URL> => {
      const sent = await fetch(`${address}&allows=${allows ? 'yes' : 'no'}`, { redirect: 'manual' });
      const to = sent.headers.get('location');
      if (to === null) throw new Error(`person requires to be sent back, got ${sent.status} ${await sent.text()}`);
      return new URL(to);
    },
    /** How many tokens are good now. */
    good: () => [...access.values()].filter(({ endsAtMs, family }) => endsAtMs > clock() && !dead.has(family)).length,
    close: async () => {
      server.closeAllConnections();
      await new Promise<void>((resolve) => server.close(() => resolve()));
      await fhir.close();
    },
  };
}
