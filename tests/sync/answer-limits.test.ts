import { expect, test } from 'vitest';
import { ok, type Result } from '../../src/result.ts';
import { ANSWER_LIMITS, type Answer, ask } from '../../src/sync/ask.ts';
import { eachPage } from '../../src/sync/document-pages.ts';
import type { FhirServer } from '../../src/sync/fhir-server.ts';
import type { Surroundings } from '../../src/sync/http.ts';
import type { ServerError } from '../../src/sync/server-error.ts';

const BASE = 'https://clinic.invalid/fhir';

/** What comes of asking a server that answers with this text. */
const answered = (text: string, status = 200): Promise<Result<Answer, ServerError>> => {
  const around: Surroundings = {
    http: async () => ({ status, headers: new Headers(), text: async () => text }),
    nowMs: () => 0,
    chance: () => 0,
    wait: async () => undefined,
    newId: () => '',
  };
  return ask(around, BASE, { method: 'GET', headers: {} });
};
const NOT_FHIR = { ok: false, error: { kind: 'not-fhir' } };

test('an answer that is longer than the limit is not looked into', async () => {
  const bundle = '{"resourceType":"Bundle","type":"searchset"}';
  expect(await answered(bundle.padEnd(1_000_000))).toMatchObject({ ok: true });
  expect(await answered(bundle.padEnd(ANSWER_LIMITS.characters + 1))).toEqual(NOT_FHIR);
});

test('an answer that is nested as deep as the limit is read, and one level more is not', async () => {
  // The object itself is one level.
  const nested = (levels: number) => `{"resourceType":"Bundle","entry":${'['.repeat(levels - 1)}"]}"${']'.repeat(levels - 1)}}`;
  expect(await answered(nested(ANSWER_LIMITS.levels))).toMatchObject({ ok: true });
  expect(await answered(nested(ANSWER_LIMITS.levels + 1))).toEqual(NOT_FHIR);
  expect(await answered(nested(100_000))).toEqual(NOT_FHIR);
});

test('of a server’s own words no more than a sentence is kept, and of a deep answer none', async () => {
  const said = (words: string) => JSON.stringify({ resourceType: 'OperationOutcome', issue: [{ diagnostics: words }] });
  expect(await answered(said('x'.repeat(5000)), 400)).toEqual({
    ok: false,
    error: { kind: 'refused', status: 400, detail: 'x'.repeat(200) },
  });
  const deep = `{"issue":[{"diagnostics":"words","details":${'['.repeat(5000)}${']'.repeat(5000)}}]}`;
  expect(await answered(deep, 400)).toEqual({ ok: false, error: { kind: 'refused', status: 400, detail: '' } });
});

/** Reads a server's pages. @param page the n-th, from 1 */
async function readAll(page: (n: number) => Answer) {
  let asked = 0;
  let entries = 0;
  const server: FhirServer = {
    base: BASE,
    get: async () => {
      asked += 1;
      return ok(page(asked));
    },
    post: async () => {
      throw new Error('nothing is sent here');
    },
  };
  const read = await eachPage(server, `${BASE}/DocumentReference`, async ({ bundle }) => {
    entries += (bundle.entry as readonly unknown[]).length;
    return ok(undefined);
  });
  return { read, asked, entries };
}
const pageOf = (count: number, next?: string): Answer => ({
  resourceType: 'Bundle',
  type: 'searchset',
  entry: Array.from({ length: count }, () => ({})),
  ...(next === undefined ? {} : { link: [{ relation: 'next', url: next }] }),
});

test('an answer with as many entries as the limit is read, and one with more is not', async () => {
  const { entries } = ANSWER_LIMITS;
  expect(await readAll(() => pageOf(entries))).toMatchObject({ read: { ok: true }, entries });
  expect(await readAll(() => pageOf(entries + 1))).toMatchObject({ read: NOT_FHIR, entries: 0 });
});

test('as many pages as the limit are read; a server whose pages never end, or lead in a circle or elsewhere, is stopped', async () => {
  const { pages } = ANSWER_LIMITS;
  const next = (n: number) => `${BASE}?page=${n + 1}`;
  expect(await readAll((n) => pageOf(1, n < pages ? next(n) : undefined))).toMatchObject({ read: { ok: true }, entries: pages });
  expect(await readAll((n) => pageOf(1, next(n)))).toMatchObject({ read: NOT_FHIR, asked: pages });
  expect(await readAll(() => pageOf(1, next(1)))).toMatchObject({ read: NOT_FHIR, asked: 2 });
  expect(await readAll(() => pageOf(1, 'https://elsewhere.invalid/fhir'))).toMatchObject({ read: NOT_FHIR, asked: 1 });
});
