import type { Result } from '../result.ts';
import type { Access } from './access.ts';
import { type Answer, ask } from './ask.ts';
import type { HttpRequest, Surroundings } from './http.ts';
import type { ServerError } from './server-error.ts';

const FHIR_JSON = 'application/fhir+json';

/** A server that speaks FHIR R4. */
export interface FhirServer {
  readonly get: (url: string) => Promise<Result<Answer, ServerError>>;
  /** Sends a transaction. */
  readonly post: (bundle: unknown) => Promise<Result<Answer, ServerError>>;
  /** Its address, without a slash at its end. */
  readonly base: string;
}

/** @param access asked before each request, and once more when the server says that its token is good no longer */
export function fhirServer(around: Surroundings, base: string, access: Access): FhirServer {
  const asked = async (url: string, request: HttpRequest): Promise<Result<Answer, ServerError>> => {
    const as = (bearer: string | null): HttpRequest => ({
      ...request,
      headers: {
        ...request.headers,
        accept: FHIR_JSON,
        ...(bearer === null ? {} : { authorization: `Bearer ${bearer}` }),
      },
    });
    const token = await access.token();
    if (!token.ok) return token;
    const found = await ask(around, url, as(token.value));
    const isRefused = !found.ok && found.error.kind === 'not-allowed' && found.error.status === 401;
    if (!isRefused || token.value === null) return found;
    const next = await access.renewed(token.value);
    return next.ok ? ask(around, url, as(next.value)) : next;
  };
  return {
    base,
    get: (url) => asked(url, { method: 'GET', headers: {} }),
    post: (bundle) => asked(base, { method: 'POST', headers: { 'content-type': FHIR_JSON }, body: JSON.stringify(bundle) }),
  };
}
