import type { Bundle } from '@medplum/fhirtypes';

/** What a token allows. */
export interface Grant {
  readonly scopes: readonly string[];
  /** Whose records alone, e.g. `one`; null: whoever's. */
  readonly patient: string | null;
}

/** Whether a scope of SMART 2 among those granted gives all these letters for a type. */
function gives({ scopes }: Grant, type: string, letters: string): boolean {
  return scopes.some((scope) => {
    const [, of, what] = /^(?:patient|user)\/([A-Za-z]+)\.([cruds]+)$/.exec(scope) ?? [];
    return of === type && [...letters].every((letter) => what?.includes(letter));
  });
}

const subjectOf = (resource: unknown): string | undefined =>
  (resource as { readonly subject?: { readonly reference?: string } }).subject?.reference;

function entryAllowed(grant: Grant, { request, resource }: NonNullable<Bundle['entry']>[number]): boolean {
  if (!request || !resource) return false;
  // A conditional create looks first; a conditional update looks, and creates what is not there.
  const letters = request.method === 'POST' ? 'cs' : request.method === 'PUT' ? 'cus' : 'x';
  const subject = subjectOf(resource);
  const isTheirs = grant.patient === null || subject === undefined || subject === `Patient/${grant.patient}`;
  return gives(grant, resource.resourceType, letters) && isTheirs;
}

/** Whether a token of this grant may ask this, as a strict server would see it. */
export function mayAsk(grant: Grant, method: string, url: URL, body: unknown): boolean {
  if (method === 'POST') return ((body as Bundle).entry ?? []).every((entry) => entryAllowed(grant, entry));
  const [, type = '', id] = /^\/fhir\/(\w+)(?:\/([^/]+))?$/.exec(url.pathname) ?? [];
  if (id !== undefined)
    return gives(grant, type, 'r') && (grant.patient === null || (type === 'Patient' && id === grant.patient));
  const asked = url.searchParams.get('patient');
  return gives(grant, type, 'rs') && asked !== null && (grant.patient === null || asked.endsWith(grant.patient));
}
