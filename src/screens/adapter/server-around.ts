import type { TakeInError } from '../../record/file/record-store.ts';
import { newId } from '../../record/new-id.ts';
import type { StoreError } from '../../record/store-error.ts';
import type { Surroundings } from '../../sync/http.ts';
import type { ServerError } from '../../sync/server-error.ts';
import type { ServerFault } from '../server/server-services.ts';
import type { Problem } from '../services.ts';
import { problemOf } from './problem-of.ts';

const SERVER_KINDS = {
  unreachable: true,
  'not-allowed': true,
  'signed-out': true,
  busy: true,
  'at-once': true,
  condition: true,
  failed: true,
  'too-large': true,
  'not-there': true,
  refused: true,
  'not-fhir': true,
} as const satisfies Readonly<Record<ServerError['kind'], true>>;

const isServerError = (error: ServerError | StoreError | TakeInError): error is ServerError => error.kind in SERVER_KINDS;

export function faultOf(error: ServerError | StoreError | TakeInError): Problem | ServerFault {
  if (isServerError(error)) return { kind: 'server', error };
  if (error.kind === 'record-elsewhere') return { kind: 'elsewhere' };
  return error.kind === 'person-missing' ? { kind: error.kind } : problemOf(error);
}

const wait = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));

export const around: Surroundings = {
  // No cookies, no stored copies, and no way on to another address.
  http: (url, request) => fetch(url, { ...request, credentials: 'omit', cache: 'no-store', redirect: 'error' }),
  nowMs: Date.now,
  chance: Math.random,
  wait,
  newId,
};

/** What a running set holds, in whichever tab; see `record/set-locks.ts`. */
const SET_LOCK = /^evenside-set-/;
/** How often it is looked whether a set that runs is over, ms. Chosen. */
const LOOK_MS = 2000;

/** Whether a set runs in any tab. */
export async function isSetRunning(): Promise<boolean> {
  const { held = [] } = await navigator.locks.query();
  return held.some(({ name }) => name !== undefined && SET_LOCK.test(name));
}

/** The same, for what nobody waits for: while a set runs nothing is asked. */
export const aroundSets: Surroundings = {
  ...around,
  http: async (url, request) => {
    while (await isSetRunning()) await wait(LOOK_MS);
    return around.http(url, request);
  },
};
