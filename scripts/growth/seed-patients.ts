import { randomUUID } from 'node:crypto';
import { transactionBundle } from '../../src/fhir/bundles.ts';
import { DEFAULT_NAMING } from '../../src/fhir/naming.ts';
import { resourcesOf } from '../../src/fhir/resources.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { header, rep, result } from '../../tests/record/set-builders.ts';

const DAY_MS = 86_400_000;
export const START = Date.parse('2024-01-01T08:00:00.000Z');
/** Days between two sets that are seeded: a server in memory cannot hold all of two years. */
export const EVERY_DAYS = 28;
export const DAYS = 728;

/** A small set: two repetitions and a curve of three points. */
const smallSet = (atMs: number): StoredSet => {
  const reps = [rep(1), rep(2)];
  return {
    ...header({ id: randomUUID(), startedAt: new Date(atMs).toISOString() }),
    state: 'finished',
    reps,
    result: result(reps),
    edits: [],
  };
};

/** The transaction of a set a time, of one patient. @returns as text */
export function bundleOf(patient: string, momentsMs: readonly number[]): string {
  const context = {
    naming: DEFAULT_NAMING,
    subject: { kind: 'existing', reference: patient },
    version: '0.1.0',
    texts: true,
    diary: [],
  } as const;
  return JSON.stringify(transactionBundle(resourcesOf(context, momentsMs.map(smallSet), []).prepared, randomUUID));
}

/** The moments of two years, thinned out. */
export const TWO_YEARS: readonly number[] = Array.from({ length: DAYS / EVERY_DAYS }, (_, i) => START + i * EVERY_DAYS * DAY_MS);
