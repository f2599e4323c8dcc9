import type { Result } from '../result.ts';
import { type Answer, ask } from './ask.ts';
import type { Surroundings } from './http.ts';
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

/** @param token asked for before each request; null: the server is open */
export function fhirServer(around: Surroundings, base: string, token: () => Promise<string | null>): FhirServer {
  const headers = async (): Promise<Readonly<Record<string, string>>> => {
    const bearer = await token();
    return { accept: FHIR_JSON, ...(bearer === null ? {} : { authorization: `Bearer ${bearer}` }) };
  };
  return {
    base,
    get: async (url) => ask(around, url, { method: 'GET', headers: await headers() }),
    post: async (bundle) =>
      ask(around, base, {
        method: 'POST',
        headers: { ...(await headers()), 'content-type': FHIR_JSON },
        body: JSON.stringify(bundle),
      }),
  };
}
