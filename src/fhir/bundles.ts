import type { Bundle, BundleEntry, BundleEntryRequest, CodeSystem, Questionnaire } from '@medplum/fhirtypes';
import { codeSystems, questionnaires } from './definitions.ts';
import { type Addressed, linked } from './linked.ts';
import type { Naming } from './naming.ts';
import { fhirMoment } from './plain-text.ts';
import type { Prepared } from './prepared.ts';

/** A bundle to keep or hand over: the resources under addresses of their own. @param at ISO 8601, UTC */
export function collectionBundle(prepared: readonly Prepared[], newId: () => string, at: string): Bundle {
  const timestamp = fhirMoment(at);
  return {
    resourceType: 'Bundle',
    identifier: { system: 'urn:ietf:rfc:3986', value: `urn:uuid:${newId()}` },
    type: 'collection',
    ...(timestamp ? { timestamp } : {}),
    entry: linked(prepared, newId).map(({ fullUrl, resource }) => ({ fullUrl, resource })),
  };
}

/** Search for what has this identifier, as the part of an address after the `?`. */
const searchFor = ({ identifier: { system, value } }: Addressed): string =>
  `identifier=${encodeURIComponent(`${system}|${value}`)}`;

/** Created unless it is there; one that may have changed since is put in the place of what is there. Either way a retry adds nothing. */
function requestOf(each: Addressed): BundleEntryRequest {
  const { resourceType } = each.resource;
  return each.changed
    ? { method: 'PUT', url: `${resourceType}?${searchFor(each)}` }
    : { method: 'POST', url: resourceType, ifNoneExist: searchFor(each) };
}

/** The same resources to be sent to a server, all or none. */
export const transactionBundle = (prepared: readonly Prepared[], newId: () => string): Bundle => ({
  resourceType: 'Bundle',
  type: 'transaction',
  entry: linked(prepared, newId).map((each) => ({ fullUrl: each.fullUrl, resource: each.resource, request: requestOf(each) })),
});

const definitionsOf = (naming: Naming): readonly (CodeSystem | Questionnaire)[] => [
  ...codeSystems(naming),
  ...questionnaires(naming),
];

/** Our code systems and questionnaires, for who runs a server: each put under its address, in the place of an older one. */
export const definitionsBundle = (naming: Naming): Bundle => ({
  resourceType: 'Bundle',
  type: 'transaction',
  entry: definitionsOf(naming).map((resource): BundleEntry => {
    const url = resource.url ?? '';
    return {
      fullUrl: url,
      resource,
      request: { method: 'PUT', url: `${resource.resourceType}?url=${encodeURIComponent(url)}` },
    };
  }),
});
