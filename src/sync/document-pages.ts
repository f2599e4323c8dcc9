import { codeSystemUrl, type Naming } from '../fhir/naming.ts';
import { fail, ok, type Result } from '../result.ts';
import { ANSWER_LIMITS, type Answer } from './ask.ts';
import type { FhirServer } from './fhir-server.ts';
import type { ServerError } from './server-error.ts';

/** Documents on one page: a set's is some 15 kB. Chosen. */
const PAGE = 50;

/** One page of what was found. */
export interface DocumentPage {
  readonly bundle: Answer;
  /** The newest `meta.lastUpdated` on it, on the server's clock; null when it says none. */
  readonly newest: string | null;
  /** When the server made the page, on its clock; null when it does not say. */
  readonly madeAt: string | null;
}

type Fields = Readonly<Record<string, unknown>>;
const fieldsOf = (value: unknown): Fields => (typeof value === 'object' && value !== null ? (value as Fields) : {});
const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

/** A moment as ISO 8601 in UTC, so that two can be compared as texts; null when it is none. */
function momentOf(value: unknown): string | null {
  const at = typeof value === 'string' ? Date.parse(value) : Number.NaN;
  return Number.isNaN(at) ? null : new Date(at).toISOString();
}

/** Where the next page is; null on the last. */
function nextOf(bundle: Answer): string | null {
  const next = listOf(bundle.link)
    .map(fieldsOf)
    .find(({ relation }) => relation === 'next');
  return typeof next?.url === 'string' ? next.url : null;
}

/** The address of a next page: of this very server, whatever it says, since nothing may be sent elsewhere. */
function ownAddress({ base }: FhirServer, next: string): string | null {
  try {
    const url = new URL(next, `${base}/`);
    return url.origin === new URL(base).origin ? url.href : null;
  } catch {
    return null;
  }
}

/** The first question: this person's records of ours, changed since a moment, in the order of the server's clock. */
export function documentsUrl({ base }: FhirServer, naming: Naming, patient: string, since: string | null): string {
  const asked = new URLSearchParams({ patient, _sort: '_lastUpdated', _count: String(PAGE) });
  asked.append('type', ['set', 'edit', 'entry'].map((code) => `${codeSystemUrl(naming, 'record')}|${code}`).join(','));
  if (since !== null) asked.append('_lastUpdated', `ge${since}`);
  return `${base}/DocumentReference?${asked}`;
}

/** Reads page after page. @param onPage gets each; a failure of it ends the reading */
export async function eachPage<E extends { readonly kind: string }>(
  server: FhirServer,
  first: string,
  onPage: (page: DocumentPage) => Promise<Result<void, E>>,
): Promise<Result<void, ServerError | E>> {
  let url: string | null = first;
  const seen = new Set<string>();
  for (let pages = 0; url !== null && pages < ANSWER_LIMITS.pages && !seen.has(url); pages += 1) {
    seen.add(url);
    const found = await server.get(url);
    if (!found.ok) return found;
    const bundle = found.value;
    if (bundle.resourceType !== 'Bundle' || bundle.type !== 'searchset') return fail({ kind: 'not-fhir' });
    if (listOf(bundle.entry).length > ANSWER_LIMITS.entries) return fail({ kind: 'not-fhir' });
    const times = listOf(bundle.entry).flatMap((entry) => {
      const at = momentOf(fieldsOf(fieldsOf(fieldsOf(entry).resource).meta).lastUpdated);
      return at === null ? [] : [at];
    });
    const newest = times.reduce<string | null>((last, at) => (last === null || at > last ? at : last), null);
    const done = await onPage({ bundle, newest, madeAt: momentOf(fieldsOf(bundle.meta).lastUpdated) });
    if (!done.ok) return done;
    const next = nextOf(bundle);
    url = next === null ? null : ownAddress(server, next);
    if (next !== null && url === null) return fail({ kind: 'not-fhir' });
  }
  return url === null ? ok(undefined) : fail({ kind: 'not-fhir' });
}
