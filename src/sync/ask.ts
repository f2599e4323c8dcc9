import { levelsOf } from '../record/json-levels.ts';
import { fail, ok, type Result } from '../result.ts';
import { waitBefore } from './back-off.ts';
import type { HttpRequest, Surroundings } from './http.ts';
import { retryAfterMs } from './retry-after.ts';
import { isPassing, type ServerError } from './server-error.ts';

/** What a server answered, as JSON gives it. */
export type Answer = Readonly<Record<string, unknown>>;

/** How often something is asked before it is given up until the next time. Chosen: two to four minutes in all. */
const TRIES = 8;
/** Longest part of a server's own words that is kept. Chosen. */
const DETAIL_LENGTH = 200;

/**
 * Most that is read of one answer: longer, deeper or fuller ones are not what was asked for. Chosen: a page of fifty hours' sets. `entries` in one answer and `pages` in
 * one go: a hundred thousand records either way, so that a server whose answers never end is stopped.
 */
export const ANSWER_LIMITS = { characters: 200_000_000, levels: 60, entries: 100_000, pages: 2000 } as const;

const isObject = (value: unknown): value is Answer => typeof value === 'object' && value !== null && !Array.isArray(value);

function parsed(text: string): unknown {
  const { characters, levels } = ANSWER_LIMITS;
  if (text.length > characters || levelsOf(text, levels) > levels) return null;
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** The first that an OperationOutcome says. */
function detailOf(body: unknown): string {
  const issue = isObject(body) && Array.isArray(body.issue) ? (body.issue[0] as unknown) : null;
  if (!isObject(issue)) return '';
  const text = isObject(issue.details) ? issue.details.text : undefined;
  const words = typeof text === 'string' ? text : issue.diagnostics;
  return typeof words === 'string' ? words.slice(0, DETAIL_LENGTH) : '';
}

function errorOf(status: number, afterMs: number | null, body: unknown): ServerError {
  if (status === 401 || status === 403) return { kind: 'not-allowed', status };
  if (status === 404 || status === 410) return { kind: 'not-there' };
  if (status === 409) return { kind: 'at-once' };
  if (status === 412) return { kind: 'condition', detail: detailOf(body) };
  if (status === 413) return { kind: 'too-large' };
  if (status === 429) return { kind: 'busy', afterMs };
  if (status === 408 || status >= 500) return { kind: 'failed', status, afterMs };
  return { kind: 'refused', status, detail: detailOf(body) };
}

async function askedOnce({ http, nowMs }: Surroundings, url: string, request: HttpRequest): Promise<Result<Answer, ServerError>> {
  let status: number;
  let text: string;
  let after: string | null;
  try {
    const answer = await http(url, request);
    status = answer.status;
    after = answer.headers.get('retry-after');
    text = await answer.text();
  } catch {
    return fail({ kind: 'unreachable' });
  }
  const body = parsed(text);
  if (status < 200 || status > 299) return fail(errorOf(status, retryAfterMs(after, nowMs()), body));
  return isObject(body) && typeof body.resourceType === 'string' ? ok(body) : fail({ kind: 'not-fhir' });
}

/** Asks a server, and asks again, each time later, as long as that may help. */
export async function ask(around: Surroundings, url: string, request: HttpRequest): Promise<Result<Answer, ServerError>> {
  for (let attempt = 1; ; attempt += 1) {
    const found = await askedOnce(around, url, request);
    if (found.ok || !isPassing(found.error) || attempt === TRIES) return found;
    const { error } = found;
    const asked = error.kind === 'busy' || error.kind === 'failed' ? error.afterMs : null;
    const pause = waitBefore(attempt, asked, around.chance());
    if (pause === null) return found;
    await around.wait(pause);
  }
}
